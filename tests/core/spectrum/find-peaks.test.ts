import { describe, expect, it } from 'vitest';
import { findPeaks, type Peak, type PeakOptions, type WindowName } from '@sternline/core';
import { createRandom } from '../../../packages/core/src/numerics/random.js';
import { interpolatePeak } from '../../../packages/core/src/spectrum/interpolate-peak.js';
import { windowCoefficients } from '../../../packages/core/src/spectrum/window-coefficients.js';
import { windowResponse } from '../../../packages/core/src/spectrum/window-response.js';
import { binomialBounds } from '../../support/binomial.js';
import { makeRecording, type MadeRecording } from '../../support/recordings.js';

function peaksOf(made: MadeRecording, options: PeakOptions = {}): Peak[] {
  return findPeaks(makeRecording(made).channels[0]!.samples, made.sampleRate, options);
}

function worstBias(window: WindowName): number {
  const coefficients = windowCoefficients('test', window);
  let worst = 0;
  for (let offset = -0.5; offset <= 0.5; offset += 0.005) {
    const magnitudes = [-1, 0, 1].map((k) => windowResponse(coefficients, 4096, k - offset));
    const read = interpolatePeak(magnitudes, { window, coefficients, noise: 0, averages: 1 }).offset;
    worst = Math.max(worst, Math.abs(read - offset));
  }
  return worst;
}

describe('frequency between the lines', () => {
  /**
   * Worst bias of the parabola through logarithms, lines, without padding: computed with numpy; Smith, Spectral Audio Signal
   * Processing, eq. 6.30, for the parabola.
   */
  it.each([
    ['hamming', 0.016],
    ['blackman', 0.0066],
    ['blackman-harris', 0.0032],
  ] as const)('%s errs by %f of a line at worst', (window, bias) => {
    expect(Math.abs(worstBias(window) - bias)).toBeLessThan(0.1 * bias);
  });

  /** derived from the transforms of the two windows: exact but for 1/N². */
  it.each(['hann', 'rectangular'] as const)('%s is exact', (window) => {
    expect(worstBias(window)).toBeLessThan(1e-6);
  });

  it('flat-top is not read between the lines', () => {
    const [peak] = peaksOf(
      {
        sampleRate: 100,
        seconds: 40,
        channels: [{ components: [{ amplitude: 1, frequency: 20.1 }] }],
        noise: 0.05,
        seed: 1,
      },
      { window: 'flat-top', segmentLength: 400 },
    );
    expect((peak!.frequency * 400) / 100).toBeCloseTo(Math.round((20.1 * 400) / 100), 9);
    expect(Math.abs(peak!.amplitude - 1)).toBeLessThan(0.01);
  });
});

describe('noise alone', () => {
  /** The stated rate is 0.005 of recordings: at most what four standard deviations of 300 trials allow. */
  it.each([
    ['white', 100, 10],
    ['red', 100, 10],
    ['white', 200, 40],
    ['red', 200, 40],
  ] as const)('%s, %d Hz, %d s: no peak in 99 of 100 recordings', (colour, sampleRate, seconds) => {
    let alarms = 0;
    for (let seed = 0; seed < 300; seed++) {
      alarms += Math.min(1, peaksOf({ sampleRate, seconds, channels: [{}], noise: 1, seed, colour }).length);
    }
    expect(alarms).toBeLessThanOrEqual(Math.min(3, binomialBounds(300, 0.005)[1]));
  });

  it('a signal that does not move has no peak', () => {
    expect(findPeaks(new Float64Array(500).fill(9.81), 100)).toEqual([]);
  });
});

describe('a sine in noise', () => {
  const windows: WindowName[] = ['hann', 'blackman', 'blackman-harris'];
  it.each(windows)('%s: one standard error covers about 68 in 100', (window) => {
    let amplitude = 0;
    let frequency = 0;
    const trials = 400;
    for (let seed = 0; seed < trials; seed++) {
      const actual = 20 + (seed % 40) / 100;
      const components = [{ amplitude: 1, frequency: actual, phase: seed }];
      const made = { sampleRate: 100, seconds: 10, channels: [{ components }], noise: 0.8, seed };
      const [peak] = peaksOf(made, { window }).sort((a, b) => b.amplitude - a.amplitude);
      amplitude += Number(Math.abs(peak!.amplitude - 1) < peak!.amplitudeError);
      frequency += Number(Math.abs(peak!.frequency - actual) < peak!.frequencyError);
    }
    const [least, most] = binomialBounds(trials, 0.683);
    expect(amplitude).toBeGreaterThan(least);
    expect(amplitude).toBeLessThan(most);
    expect(frequency).toBeGreaterThan(least);
    expect(frequency).toBeLessThan(most);
  });

  it('stands on its noise floor: density of white noise σ²/(fs/2), over 1.5 lines', () => {
    const components = [{ amplitude: 1, frequency: 20 }];
    const made = { sampleRate: 100, seconds: 200, channels: [{ components }], noise: 0.5, seed: 5 };
    const [peak] = peaksOf(made, { segmentLength: 400 });
    // derived: floor amplitude √(2 · 2σ² · 1.5 / N) with N = 400 samples in a segment
    expect(peak!.floor / Math.sqrt((6 * 0.25) / 400)).toBeCloseTo(1, 1);
  });

  it('leaves no side lobes behind, however strong it is', () => {
    for (const window of ['hann', 'hamming', 'blackman', 'rectangular'] as const) {
      const components = [{ amplitude: 1000, frequency: 20.11 }];
      expect(
        peaksOf(
          { sampleRate: 100, seconds: 20, channels: [{ components }], noise: 0.01, seed: 3 },
          { window },
        ),
      ).toHaveLength(1);
    }
  });

  it('finds a weak line beside a strong one', () => {
    const components = [
      { amplitude: 10, frequency: 20 },
      { amplitude: 0.1, frequency: 33.3 },
    ];
    const peaks = peaksOf({ sampleRate: 100, seconds: 40, channels: [{ components }], noise: 0.05, seed: 4 });
    expect(peaks.map(({ frequency }) => Math.round(10 * frequency) / 10)).toEqual([20, 33.3]);
    expect(Math.abs(peaks[1]!.amplitude - 0.1)).toBeLessThan(4 * peaks[1]!.amplitudeError);
  });
});

describe('a sound without noise of its own', () => {
  const sampleRate = 48000;
  const random = createRandom(5);
  const second = Float64Array.from(
    { length: sampleRate },
    (_, n) => 0.3 * Math.sin((2 * Math.PI * 25 * n) / sampleRate) + 0.03 * random.normal(),
  );

  /**
   * derived: what repeats each second holds lines at whole hertz alone, 24 000 of them. The noise adds to the tone a line of its own,
   * whose parts in phase and in quadrature have the deviation 0.03 √(2 / 48 000) = 0.0002: four of them are allowed.
   * In 10 s (lines 0.73 Hz apart) they run into each other; in 20 s (0.37 Hz apart) the Hann window tells all of them apart.
   */
  it.each([10, 20])('looped each second for %i s shows the tone and no end of lines', (seconds) => {
    const samples = Float64Array.from(
      { length: seconds * sampleRate },
      (_, n) => second[n % sampleRate] ?? NaN,
    );
    const peaks = findPeaks(samples, sampleRate);
    expect(peaks.length).toBeGreaterThan(100);
    expect(peaks.length).toBeLessThanOrEqual(2000);
    const highest = peaks.reduce((best, peak) => (peak.amplitude > best.amplitude ? peak : best));
    expect(Math.abs(highest.frequency - 25)).toBeLessThan(0.01);
    expect(Math.abs(highest.amplitude - 0.3)).toBeLessThan(0.0008);
    const frequencies = peaks.map(({ frequency }) => frequency);
    expect(frequencies).toEqual([...frequencies].sort((a, b) => a - b));
    if (seconds === 20)
      for (const frequency of frequencies)
        expect(Math.abs(frequency - Math.round(frequency))).toBeLessThan(0.2);
  });

  it.each([25, 25.3])('a pure tone of %f Hz is one line', (frequency) => {
    const samples = Float64Array.from({ length: 10 * sampleRate }, (_, n) =>
      Math.sin((2 * Math.PI * frequency * n) / sampleRate),
    );
    const peaks = findPeaks(samples, sampleRate);
    expect(peaks).toHaveLength(1);
    expect(Math.abs(peaks[0]!.frequency - frequency)).toBeLessThan(0.001);
  });

  it('silence has none', () => {
    expect(findPeaks(new Float64Array(10 * sampleRate), sampleRate)).toEqual([]);
  });
});

describe('findPeaks refuses', () => {
  it('a false-alarm rate of 0', () => {
    expect(() => findPeaks(new Float64Array(100), 100, { falseAlarmRate: 0 })).toThrow(
      new RangeError('findPeaks: falseAlarmRate must be between 0 and 1, got 0'),
    );
  });
});
