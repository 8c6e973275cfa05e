import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { leastSquaresSpectrum, readDelimited } from '@sternline/core';
import fixtures from '../../reference/spectrum/least-squares.json';

describe('leastSquaresSpectrum', () => {
  it('agrees with numpy and scipy (tests/reference/spectrum/make_least_squares.py)', () => {
    const frequencies = fixtures.fits.map(({ frequency }) => frequency);
    const spectrum = leastSquaresSpectrum(fixtures, { frequencies });
    fixtures.fits.forEach(({ amplitude, phase, share }, k) => {
      // 0.05 Hz is a sixth of a turn over these times, where the normal equations lose some digits.
      const tolerance = k === 0 ? 1e-7 : 1e-9;
      expect(Math.abs(spectrum.amplitude[k]! - amplitude)).toBeLessThan(tolerance * Math.max(1, amplitude));
      expect(Math.abs(Math.sin(spectrum.phase[k]! - phase))).toBeLessThan(tolerance);
      expect(Math.abs(spectrum.share[k]! - share)).toBeLessThan(tolerance);
    });
  });

  it('finds any sine on any level exactly, above half the mean rate too', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 100, noNaN: true }),
        fc.double({ min: 5, max: 190, noNaN: true }),
        fc.double({ min: -3, max: 3, noNaN: true }),
        (amplitude, hertz, angle) => {
          // 100 Hz on average: half of it is 50.
          const times = Float64Array.from(
            { length: 150 },
            (_, i) => 7 + 0.01 * i + 0.004 * Math.sin(1.7 * i * i),
          );
          const samples = times.map((t) => 9.81 + amplitude * Math.cos(2 * Math.PI * hertz * t + angle));
          const spectrum = leastSquaresSpectrum({ times, samples }, { frequencies: [hertz] });
          expect(spectrum.amplitude[0]! / amplitude).toBeCloseTo(1, 8);
          expect(Math.sin((spectrum.phase[0]! - angle) / 2)).toBeCloseTo(0, 8);
          expect(spectrum.share[0]).toBeCloseTo(1, 8);
        },
      ),
      { numRuns: 60, seed: 4 },
    );
  });

  it('on even times at a frequency of the transform is the transform', () => {
    const times = Float64Array.from({ length: 64 }, (_, i) => i / 64);
    const samples = times.map((_, i) => Math.sin(i * i * 0.37));
    const [re, im] = [0, 1].map((part) =>
      samples.reduce((sum, value, i) => {
        const angle = (2 * Math.PI * 9 * i) / 64;
        return sum + value * (part === 0 ? Math.cos(angle) : Math.sin(angle));
      }, 0),
    );
    const { amplitude } = leastSquaresSpectrum({ times, samples }, { frequencies: [9] });
    expect(amplitude[0]).toBeCloseTo((2 * Math.hypot(re!, im!)) / 64, 12);
  });

  it('says nothing where the times cannot tell a frequency from a level', () => {
    const times = [0, 1, 2, 3, 4];
    const spectrum = leastSquaresSpectrum({ times, samples: [1, 2, 1, 2, 1] }, { frequencies: [0, 1] });
    expect(Array.from(spectrum.amplitude)).toEqual([NaN, NaN]);
  });

  it('reads a line above the fading of the interpolated samples out of a file with irregular stamps', () => {
    let t = 0;
    let seed = 1;
    const rows = Array.from({ length: 900 }, () => {
      seed = (seed * 48271) % 2147483647;
      t += 0.002 + 0.016 * (seed / 2147483647);
      const shake = 0.8 * Math.sin(2 * Math.PI * 44 * t);
      return `${t.toFixed(5)},${shake.toFixed(5)},0.1,9.81`;
    });
    const { sampling } = readDelimited(['t (s),x (m/s²),y (m/s²),z (m/s²)', ...rows].join('\n'));
    expect(sampling.timeBase).toBe('stamps');
    const { times, channels } = sampling.asStamped!;
    const { amplitude } = leastSquaresSpectrum(
      { times, samples: channels[0]!.samples },
      { frequencies: [44] },
    );
    // Stamps to 10 µs and figures to 5 places: at 44 Hz 10 µs are 0.003 rad, far below one per cent over 900 rows.
    expect(amplitude[0]).toBeCloseTo(0.8, 3);
  });

  it('refuses lists that do not fit', () => {
    const refuse =
      (times: readonly number[], samples: readonly number[], frequencies = [1]): (() => unknown) =>
      () =>
        leastSquaresSpectrum({ times, samples }, { frequencies });
    expect(refuse([1, 2, 3], [1, 2, 3])).toThrow(
      'leastSquaresSpectrum: times must be at least 4 times, got a list of 3',
    );
    expect(refuse([1, 2, 3, 4], [1, 2, 3])).toThrow(
      'leastSquaresSpectrum: samples must be as many as there are times, 4, got 3',
    );
    expect(refuse([1, 2, NaN, 4], [1, 2, 3, 4])).toThrow(
      'leastSquaresSpectrum: times[2] must be a finite number, got NaN',
    );
    expect(refuse([1, 2, 3, 4], [1, 2, 3, 4], [-1])).toThrow(
      'leastSquaresSpectrum: frequencies[0] must be a finite number of at least 0, got -1',
    );
  });
});
