import { describe, expect, it } from 'vitest';
import { nextPeak } from '../../../packages/demo/src/charts/next-peak.js';

describe('nextPeak', () => {
  const peaks = [50, 10, 30].map((frequency) => ({ frequency }));

  it('steps from peak to peak on either side, and stops at the last', () => {
    expect(nextPeak(peaks, { from: 0, sign: 1, clear: 0.5 })).toBe(10);
    expect(nextPeak(peaks, { from: 10.2, sign: 1, clear: 0.5 })).toBe(30);
    expect(nextPeak(peaks, { from: 50, sign: -1, clear: 0.5 })).toBe(30);
    expect(nextPeak(peaks, { from: 50, sign: 1, clear: 0.5 })).toBeUndefined();
  });
});
