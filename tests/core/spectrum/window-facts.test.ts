import { describe, expect, it } from 'vitest';
import { windowFacts, windowSamples, type WindowName } from '@sternline/core';

/**
 * Harris, "On the use of windows for harmonic analysis with the discrete Fourier transform", Proc. IEEE 66(1), 1978, table 1,
 * recomputed at N = 4096 with numpy (the printed Hamming scallop loss of 1.78 dB is a misprint); flat-top from scipy's coefficients.
 */
const TABLE: readonly [WindowName, number, number, number][] = [
  ['rectangular', 1, 1, 3.9224],
  ['hann', 0.5, 1.5, 1.4236],
  ['hamming', 0.54, 1.3628, 1.7514],
  ['blackman', 0.42, 1.7268, 1.0989],
  ['blackman-harris', 0.3588, 2.0044, 0.8256],
  ['flat-top', 0.2156, 3.7702, 0.0098],
];

describe('windowFacts against the published table', () => {
  it.each(TABLE)('%s', (name, gain, bandwidth, loss) => {
    const facts = windowFacts(name, 4096);
    expect(Math.abs(facts.coherentGain - gain)).toBeLessThan(5.1e-5);
    expect(Math.abs(facts.equivalentNoiseBandwidth - bandwidth)).toBeLessThan(5.1e-5);
    expect(Math.abs(facts.scallopLoss - loss)).toBeLessThan(5.1e-5);
  });

  /** derived: the periodic Hann window has 1.5 lines at every even length; the symmetric one of 128 would have 1.5118. */
  it('is of the periodic window', () => {
    expect(windowFacts('hann', 128).equivalentNoiseBandwidth).toBeCloseTo(1.5, 12);
  });

  it.each(TABLE)('the scallop loss of %s is what a direct sum gives at an odd length', (name) => {
    const samples = windowSamples(name, 15);
    const sum = (f: number) =>
      Math.hypot(
        ...[Math.cos, Math.sin].map((g) =>
          samples.reduce((s, w, n) => s + w * g((2 * Math.PI * f * n) / 15), 0),
        ),
      );
    expect(windowFacts(name, 15).scallopLoss).toBeCloseTo(-20 * Math.log10(sum(0.5) / sum(0)), 10);
  });
});

describe('windowFacts refuses', () => {
  it('a length of 1', () => {
    expect(() => windowFacts('hann', 1)).toThrow(
      new RangeError('windowFacts: length must be a whole number of at least 2, got 1'),
    );
  });
  it('an unknown window', () => {
    expect(() => windowSamples('toString' as WindowName, 8)).toThrow(
      /^windowSamples: name must be one of rectangular/,
    );
  });
});
