import { describe, expect, it } from 'vitest';
import { resample } from '@sternline/core';
import { kaiserWindow } from '../../../packages/core/src/recording/kaiser-window.js';
import fixtures from '../../reference/recording/resample.json';

describe('resample against scipy (tests/reference/recording/make_resample.py)', () => {
  it.each(fixtures.cases)('$up to $down', ({ up, down, length, samples }) => {
    const result = resample(fixtures.input, { from: 100 * down, to: 100 * up });
    expect(result.samples).toHaveLength(length);
    const stride = Math.max(1, Math.floor(length / 60));
    // Both sum some hundred products in doubles, the window within 1e-11 between its tabulated points.
    samples.forEach((value, i) => {
      expect(Math.abs(result.samples[i * stride]! - value)).toBeLessThan(1e-9);
    });
  });
});

/** Root mean square of the middle of a resampled cosine, away from the ends, over that of a cosine. */
function gain(hertz: number, { from, to }: { from: number; to: number }): number {
  const input = Float64Array.from({ length: 6000 }, (_, i) =>
    Math.cos((2 * Math.PI * hertz * i) / from + 0.3),
  );
  const { samples } = resample(input, { from, to });
  const margin = Math.ceil(70 * Math.max(1, to / from));
  const middle = samples.subarray(margin, samples.length - margin);
  return Math.sqrt((2 * middle.reduce((sum, value) => sum + value ** 2, 0)) / middle.length);
}

describe('resample keeps what it states', () => {
  const rates = [
    { from: 1000, to: 400 },
    { from: 1000, to: 997 },
    { from: 1000, to: Math.E * 200 },
    { from: 400, to: 1000 },
  ];

  it.each(rates)('from $from to $to Hz: samples of the passband stand where the wave is', ({ from, to }) => {
    const { passband } = resample([0, 0], { from, to });
    expect(passband).toBeCloseTo(0.45 * Math.min(from, to), 9);
    for (const share of [0.02, 0.31, 0.63, 0.87, 0.97, 1]) {
      const hertz = share * passband;
      const wave = (t: number): number => Math.sin(2 * Math.PI * hertz * t + 0.7);
      const input = Float64Array.from({ length: 2000 }, (_, i) => wave(i / from));
      const { samples } = resample(input, { from, to });
      const margin = Math.ceil(70 * Math.max(1, to / from));
      for (let j = margin; j < samples.length - margin; j += 7)
        expect(Math.abs(samples[j]! - wave(j / to)), `${hertz} Hz, sample ${j}`).toBeLessThan(1e-4);
    }
  });

  it.each(rates.filter(({ from, to }) => to < from))(
    'from $from to $to Hz: nothing folds',
    ({ from, to }) => {
      const { stopband } = resample([0, 0], { from, to });
      expect(stopband).toBe(Math.min(from, to) / 2);
      for (let hertz = stopband + 0.001; hertz < from / 2; hertz += 0.06 * stopband)
        // −90 dB
        expect(gain(hertz, { from, to }), `${hertz} Hz`).toBeLessThan(10 ** (-90 / 20));
    },
  );

  it('falls to half at 0.95 of half the lower rate, midway between its bands', () => {
    // A windowed sine cardinal has exactly half its gain at its cut-off, to within the ripple.
    expect(gain(0.95 * 200, { from: 1000, to: 400 })).toBeCloseTo(0.5, 3);
  });

  it('keeps a steady level, whatever the rates', () => {
    for (const { from, to } of rates) {
      const { samples } = resample(new Float64Array(300).fill(9.80665), { from, to });
      samples.forEach((value) => {
        expect(value).toBeCloseTo(9.80665, 12);
      });
    }
  });

  it('is linear, and hands samples through where the rate stays', () => {
    const input = Float64Array.from({ length: 500 }, (_, i) => Math.sin(i * i));
    const twice = resample(
      input.map((value) => 2 * value + 1),
      { from: 300, to: 200 },
    ).samples;
    resample(input, { from: 300, to: 200 }).samples.forEach((value, i) => {
      expect(twice[i]).toBeCloseTo(2 * value + 1, 11);
    });
    expect(resample(input, { from: 50, to: 50 }).samples).toEqual(input);
    expect(resample([], { from: 50, to: 60 }).samples).toHaveLength(0);
  });

  it('refuses rates that are none, or that ask for too much', () => {
    expect(() => resample([1], { from: 0, to: 1 })).toThrow(
      'resample: from must be a finite number greater than 0, got 0',
    );
    expect(() => resample([1], { from: 1, to: NaN })).toThrow(
      'resample: to must be a finite number greater than 0, got NaN',
    );
    expect(() => resample([1, 2], { from: 1e-6, to: 1e6 })).toThrow(
      'resample: to must be a rate that gives at most 1073741824 samples, got 1000000',
    );
  });
});

describe('kaiserWindow', () => {
  it('agrees with published values of the Bessel function', () => {
    // Abramowitz and Stegun, Handbook of Mathematical Functions, table 9.8: I0(1) = 1.266066, I0(2) = 2.279585,
    // I0(5) = 27.239872; here from their series to more places (derived).
    expect(kaiserWindow(5)(1)).toBeCloseTo(1 / 27.239871823604442, 12);
    expect(kaiserWindow(2)(Math.sqrt(0.75))).toBeCloseTo(1.2660658777520084 / 2.279585302336067, 10);
    expect(kaiserWindow(8)(0)).toBe(1);
    expect(kaiserWindow(8)(1.0001)).toBe(0);
  });
});
