import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { foldedFrequency } from '@sternline/core';

describe('foldedFrequency', () => {
  /** derived from f_a = |f − fs · round(f / fs)| by hand */
  it.each([
    [160, 200, 40],
    [250, 200, 50],
    [430, 400, 30],
    [390, 100, 10],
    [49, 100, 49],
    [50, 100, 50],
    [100, 100, 0],
  ])('%d Hz sampled at %d Hz shows at %d Hz', (frequency, sampleRate, expected) => {
    expect(foldedFrequency(frequency, sampleRate)).toBe(expected);
  });

  it('gives samples that cannot be told from those of the true frequency, and never more than half the rate', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 2000, noNaN: true }),
        fc.double({ min: 1, max: 500, noNaN: true }),
        (f, fs) => {
          const apparent = foldedFrequency(f, fs);
          expect(apparent).toBeLessThanOrEqual(fs / 2);
          for (let n = 0; n < 6; n++) {
            const difference =
              Math.cos((2 * Math.PI * f * n) / fs) - Math.cos((2 * Math.PI * apparent * n) / fs);
            expect(Math.abs(difference)).toBeLessThan(1e-9);
          }
        },
      ),
    );
  });

  it('refuses a rate of 0', () => {
    expect(() => foldedFrequency(10, 0)).toThrow(
      new RangeError('foldedFrequency: sampleRate must be a finite number greater than 0, got 0'),
    );
  });
});
