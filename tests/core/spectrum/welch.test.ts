import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { welch, windowSamples, type WelchOptions } from '@sternline/core';
import reference from '../../reference/spectrum/welch.json' with { type: 'json' };

/** scipy.signal.welch 1.17; tests/reference/spectrum/make_welch.py */
describe('welch against scipy', () => {
  it.each(reference.welch)(
    '$segmentLength samples, $window, overlap $overlap, detrend $detrend',
    (expected) => {
      const options = expected as unknown as WelchOptions;
      const { frequency, density } = welch(reference.samples, reference.sampleRate, options);
      expect(frequency).toHaveLength(expected.frequency.length);
      const largest = Math.max(...expected.density);
      expected.density.forEach((value, k) => {
        expect(frequency[k]).toBeCloseTo(expected.frequency[k]!, 10);
        // 1e-9 of the value; where taking out the mean leaves only rounding, 1e-15 of the largest.
        expect(Math.abs(density[k]! - value)).toBeLessThanOrEqual(1e-9 * value + 1e-15 * largest);
      });
    },
  );

  it('gives the windows of scipy.signal.get_window', () => {
    for (const { name, length, samples } of reference.windows) {
      const ours = windowSamples(name as WelchOptions['window'] & string, length);
      samples.forEach((value, n) => {
        expect(Math.abs(ours[n]! - value)).toBeLessThan(1e-14);
      });
    }
  });
});

describe('welch keeps the laws of a density', () => {
  it('holds the mean square: Parseval, one rectangular segment', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -10, max: 10, noNaN: true }), { minLength: 2, maxLength: 120 }),
        (x) => {
          const { density } = welch(x, 1, {
            segmentLength: x.length,
            window: 'rectangular',
            detrend: 'none',
          });
          const meanSquare = x.reduce((sum, value) => sum + value * value, 0) / x.length;
          const total = density.reduce((sum, value) => sum + value, 0) / x.length;
          expect(Math.abs(total - meanSquare)).toBeLessThanOrEqual(1e-12 * meanSquare + 1e-300);
        },
      ),
    );
  });

  it('grows with the square of the signal', () => {
    const once = welch(reference.samples, 250, { segmentLength: 100 }).density;
    const thrice = welch(
      reference.samples.map((x) => 3 * x),
      250,
      { segmentLength: 100 },
    ).density;
    once.forEach((value, k) => {
      expect(Math.abs(thrice[k]! - 9 * value)).toBeLessThanOrEqual(1e-12 * 9 * value + 1e-16);
    });
  });

  /** derived: a sine of amplitude 2 on a line has density A²/2 / (1.5 · Δf) there, 1.33333 (also check value of scipy's docs). */
  it('reads a sine on a line', () => {
    const x = Float64Array.from({ length: 5000 }, (_, n) => 2 * Math.sin((2 * Math.PI * 50 * n) / 1000));
    expect(welch(x, 1000, { segmentLength: 1000 }).density[50]).toBeCloseTo(4 / 3, 9);
  });

  it('does not look at segments that hold a gap', () => {
    const clean = Array.from({ length: 1000 }, (_, n) => Math.sin(n) + Math.cos(2.2 * n * n));
    const broken = clean.map((x, n) => (n >= 310 && n < 315 ? 1e6 : x));
    const options = { segmentLength: 100, overlap: 0, gaps: [{ start: 310, count: 5 }] };
    const expected = welch([...clean.slice(0, 300), ...clean.slice(400)], 1, {
      segmentLength: 100,
      overlap: 0,
    });
    welch(broken, 1, options).density.forEach((value, k) => {
      expect(value).toBeCloseTo(expected.density[k]!, 12);
    });
  });

  it('leaves its input as it was', () => {
    const samples = Float64Array.from(reference.samples);
    welch(samples, 250, { segmentLength: 64, detrend: 'linear' });
    expect([...samples]).toEqual(reference.samples);
  });
});

describe('welch refuses', () => {
  const samples = new Float64Array(100);
  it.each([
    [{ segmentLength: 101 }, 'welch: segmentLength must be a whole number from 2 to 100, got 101'],
    [{ segmentLength: 10.5 }, 'welch: segmentLength must be a whole number from 2 to 100, got 10.5'],
    [{ segmentLength: 10, overlap: 1 }, 'welch: overlap must be at least 0 and below 1, got 1'],
    [
      { segmentLength: 60, gaps: [{ start: 50, count: 1 }] },
      'welch: segmentLength must be short enough to fit between the gaps, got 60',
    ],
    [
      { segmentLength: 10, window: 'kaiser' as 'hann' },
      'welch: window must be one of rectangular, hann, hamming, blackman, blackman-harris, flat-top, got "kaiser"',
    ],
    [
      { segmentLength: 10, detrend: 'mean' as 'none' },
      'welch: detrend must be one of none, constant, linear, got "mean"',
    ],
  ])('%j', (options, message) => {
    expect(() => welch(samples, 100, options)).toThrow(new RangeError(message));
  });

  it('a rate of 0', () => {
    expect(() => welch(samples, 0, { segmentLength: 10 })).toThrow(
      new RangeError('welch: sampleRate must be a finite number greater than 0, got 0'),
    );
  });

  it('samples that are not finite', () => {
    expect(() => welch([1, 2, NaN, 4], 1, { segmentLength: 4 })).toThrow(
      new RangeError('welch: samples[2] must be a finite number, got NaN'),
    );
  });
});
