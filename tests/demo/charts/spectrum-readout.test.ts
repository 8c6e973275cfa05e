import { describe, expect, it } from 'vitest';
import { spectrumReadout } from '../../../packages/demo/src/charts/spectrum-readout.js';

describe('spectrumReadout', () => {
  const lines = { step: 0.5, amplitude: Float64Array.from({ length: 101 }, (_, index) => index / 100) };

  it('reads the nearest line, the multiple of shaft speed and the order that appears there', () => {
    const orders = [{ order: 3, frequency: 70, apparentFrequency: 30, folded: true, seen: true }];
    expect(spectrumReadout(lines, { at: 30.1, unit: 'm/s²', orders, shaftFrequency: 23.3333 })).toBe(
      '30.00 Hz · 0.600 m/s² · 1.29 × shaft speed · order 3, folded down from 70.0 Hz',
    );
  });

  it('stays inside the spectrum', () => {
    const pointing = { unit: 'm/s²', orders: [], shaftFrequency: undefined };
    expect(spectrumReadout(lines, { ...pointing, at: 1e6 })).toBe('50.00 Hz · 1.00 m/s²');
  });
});
