import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  amplitudeSpectrum,
  analyticSignal,
  bandEnvelope,
  bandLimit,
  envelopeSpectrum,
  integrateAcceleration,
  levels,
  spectrogram,
  welch,
  type WelchOptions,
} from '@sternline/core';
import reference from '../../reference/spectrum/signals.json' with { type: 'json' };
import { createRandom } from '../../../packages/core/src/numerics/random.js';
import { filterInFrequency } from '../../../packages/core/src/spectrum/filter-in-frequency.js';

const TURN = 2 * Math.PI;
const { samples, sampleRate } = reference;

function expectClose(actual: ArrayLike<number>, expected: readonly number[], relative: number): void {
  expect(actual).toHaveLength(expected.length);
  const largest = expected.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  expected.forEach((value, n) => {
    expect(Math.abs(actual[n]! - value)).toBeLessThanOrEqual(relative * largest);
  });
}

/** scipy.signal.spectrogram(mode='psd') 1.17; tests/reference/spectrum/make_signals.py */
describe('spectrogram', () => {
  it.each(reference.spectrograms)('against scipy: $segmentLength samples, $window, $detrend', (expected) => {
    const ours = spectrogram(samples, sampleRate, expected as unknown as WelchOptions);
    expectClose(ours.time, expected.time, 1e-12);
    expectClose(ours.frequency, expected.frequency, 1e-12);
    expect(ours.density).toHaveLength(expected.density.length);
    const largest = Math.max(...expected.density.flat());
    expected.density.forEach((column, t) => {
      column.forEach((value, k) => {
        // 1e-9 of the value; where taking out the mean leaves only rounding, 1e-15 of the largest.
        expect(Math.abs(ours.density[t]![k]! - value)).toBeLessThanOrEqual(1e-9 * value + 1e-15 * largest);
      });
    });
  });

  it('averages to what welch gives', () => {
    const options = { segmentLength: 80, overlap: 0.5 };
    const { density } = spectrogram(samples, sampleRate, options);
    const mean = density[0]!.map((_, k) => density.reduce((sum, at) => sum + at[k]!, 0) / density.length);
    expectClose(mean, [...welch(samples, sampleRate, options).density], 1e-12);
  });

  it('leaves out what meets a gap and refuses where nothing is left', () => {
    const options = { segmentLength: 100, overlap: 0, gaps: [{ start: 150, count: 3 }] };
    expect([...spectrogram(samples, 1, options).time]).toEqual([50, 250, 350]);
    expect(() => spectrogram(samples, 1, { ...options, segmentLength: 400 })).toThrow(
      new RangeError('spectrogram: segmentLength must be short enough to fit between the gaps, got 400'),
    );
  });
});

/** scipy.signal.hilbert; even, odd, power-of-two and prime lengths. */
describe('analyticSignal', () => {
  it.each(reference.analytic)('against scipy: $length samples', ({ length, imaginary, envelope }) => {
    const ours = analyticSignal(samples.slice(0, length));
    expectClose(ours.imaginary, imaginary, 1e-12);
    expectClose(ours.envelope, envelope, 1e-12);
    expect([...ours.real]).toEqual(samples.slice(0, length));
  });

  it('turns a cosine into a sine', () => {
    const cosine = Array.from({ length: 90 }, (_, n) => Math.cos((TURN * 7 * n) / 90));
    const sine = cosine.map((_, n) => Math.sin((TURN * 7 * n) / 90));
    expectClose(analyticSignal(cosine).imaginary, sine, 1e-12);
  });

  it('refuses one sample', () => {
    expect(() => analyticSignal([1])).toThrow(
      new RangeError('analyticSignal: samples must be at least 2 long, got 1'),
    );
  });
});

describe('levels', () => {
  /** numpy.std, scipy.stats.kurtosis(fisher=False) */
  it.each(reference.levels)('against scipy: $length samples', ({ length, mean, rms, peak, kurtosis }) => {
    const ours = levels(samples.slice(0, length));
    expect(ours.mean).toBeCloseTo(mean, 12);
    expect(ours.rms).toBeCloseTo(rms, 12);
    expect(ours.peak).toBeCloseTo(peak, 12);
    expect(ours.kurtosis).toBeCloseTo(kurtosis, 11);
    expect(ours.crestFactor).toBeCloseTo(peak / rms, 12);
  });

  it('crest factor and kurtosis do not know size or offset', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 100, noNaN: true }),
        fc.double({ min: -100, max: 100, noNaN: true }),
        (gain, offset) => {
          const [plain, moved] = [levels(samples), levels(samples.map((x) => gain * x + offset))];
          expect(moved.crestFactor).toBeCloseTo(plain.crestFactor, 6);
          expect(moved.kurtosis).toBeCloseTo(plain.kurtosis, 6);
        },
      ),
    );
  });

  it('has no ratios for what does not move', () => {
    expect(levels([9.81, 9.81, 9.81])).toMatchObject({ crestFactor: NaN, kurtosis: NaN });
    expect(() => levels([])).toThrow(new RangeError('levels: samples must be at least 1 long, got 0'));
  });
});

describe('bandLimit and integrateAcceleration', () => {
  /** From the definition, by numpy's transform. */
  it.each(reference.bands)('against numpy: $from to $to Hz', (expected) => {
    const band = { from: expected.from, to: expected.to };
    expectClose(bandLimit(samples, sampleRate, band), expected.limited, 1e-9);
    expectClose(integrateAcceleration(samples, sampleRate, { band }), expected.velocity, 1e-9);
    expectClose(
      integrateAcceleration(samples, sampleRate, { band, give: 'displacement' }),
      expected.displacement,
      1e-9,
    );
  });

  /** Check values, severity: 4.5 mm/s rms at 25 Hz is 0.70686 m/s² rms and 81.028 µm peak to peak. */
  it('gives the velocity and displacement of a sine', () => {
    const acceleration = Array.from(
      { length: 8000 },
      (_, n) => 9.81 + 0.70686 * Math.SQRT2 * Math.sin((TURN * 25 * n) / 1000),
    );
    const options = { band: { from: 10, to: 400 } } as const;
    const velocity = integrateAcceleration(acceleration, 1000, options).slice(3000, 5000);
    const displacement = integrateAcceleration(acceleration, 1000, { ...options, give: 'displacement' });
    expect(Math.abs(levels(velocity).rms / 0.0045 - 1)).toBeLessThan(1e-4);
    expect(Math.abs((2 * levels(displacement.slice(3000, 5000)).peak) / 81.028e-6 - 1)).toBeLessThan(1e-3);
  });

  it('passes a sine within the band unshifted and nothing a third of an octave outside', () => {
    const sine = (frequency: number) =>
      Float64Array.from({ length: 4000 }, (_, n) => Math.sin((TURN * frequency * n) / 500 + 1));
    const band = { from: 20, to: 100 };
    const middle = (x: Float64Array) => [...x.slice(1500, 2500)];
    for (const frequency of [20, 55, 100]) {
      const error = middle(bandLimit(sine(frequency), 500, band)).map(
        (x, n) => x - sine(frequency)[1500 + n]!,
      );
      expect(Math.max(...error.map(Math.abs))).toBeLessThan(1e-3);
    }
    for (const frequency of [14, 130, 240]) {
      expect(Math.max(...middle(bandLimit(sine(frequency), 500, band)).map(Math.abs))).toBeLessThan(1e-3);
    }
  });

  it('a signal of many blocks comes out as one of few', () => {
    const random = createRandom(5);
    const long = Float64Array.from({ length: 300_000 }, () => random.normal());
    const gain = (frequency: number) => ({ real: Math.exp(-((frequency - 50) ** 2) / 200), imaginary: 0 });
    const short = filterInFrequency(long, { sampleRate: 1000, gain, settle: 400 });
    const wide = filterInFrequency(long, { sampleRate: 1000, gain, settle: 60_000 });
    const { rms } = levels(wide);
    for (let n = 1000; n < 299_000; n += 7) expect(Math.abs(short[n]! - wide[n]!)).toBeLessThan(1e-6 * rms);
  });

  it.each([
    [{ from: 0, to: 10 }, '"0 and 10"'],
    [{ from: 10, to: 5 }, '"10 and 5"'],
    [{ from: 10, to: 101 }, '"10 and 101"'],
  ])('refuse the band %j', (band, got) => {
    const text = `two rising frequencies above 0 up to half the sampling rate, got ${got}`;
    expect(() => bandLimit(samples, 200, band)).toThrow(new RangeError(`bandLimit: band must be ${text}`));
    expect(() => integrateAcceleration(samples, 200, { band })).toThrow(
      `integrateAcceleration: band must be ${text}`,
    );
    expect(() => bandEnvelope(samples, 200, band)).toThrow(`bandEnvelope: band must be ${text}`);
  });
});

describe('the envelope', () => {
  it('of a modulated sine is its modulation', () => {
    const modulation = (n: number) => 1 + 0.4 * Math.cos((TURN * 8 * n) / 2000);
    const x = Array.from({ length: 8000 }, (_, n) => modulation(n) * Math.sin((TURN * 400 * n) / 2000));
    const envelope = bandEnvelope(x, 2000, { from: 300, to: 500 });
    for (let n = 1000; n < 7000; n += 13) expect(Math.abs(envelope[n]! - modulation(n))).toBeLessThan(1e-4);
    const { frequency, amplitude } = envelopeSpectrum(x, 2000, {
      band: { from: 300, to: 500 },
      segmentLength: 2000,
    });
    expect(frequency[8]).toBe(8);
    expect(Math.abs(amplitude[8]! - 0.4)).toBeLessThan(0.004);
  });

  /** A rattle that knocks twice a turn at 21 Hz and rings at 1 800 Hz: hardly anything at 42 Hz in the sound itself. */
  it('shows the blows of a rattle that the spectrum of the sound does not', () => {
    const random = createRandom(3);
    const x = Float64Array.from({ length: 32_000 }, (_, n) => {
      const since = ((n / 8000) * 42) % 1;
      return 0.02 * random.normal() + Math.exp((-since / 42) * 500) * Math.sin((TURN * 1800 * since) / 42);
    });
    const segments = { segmentLength: 8000 };
    const blows = envelopeSpectrum(x, 8000, { band: { from: 1300, to: 2500 }, ...segments });
    const strongest = [...blows.amplitude.keys()]
      .filter((k) => blows.frequency[k]! < 400)
      .sort((a, b) => blows.amplitude[b]! - blows.amplitude[a]!);
    expect(blows.frequency[strongest[0]!]).toBe(42);
    const blow = blows.amplitude[42]!;
    expect(amplitudeSpectrum(x, 8000, segments).amplitude[42]!).toBeLessThan(0.1 * blow);
  });
});
