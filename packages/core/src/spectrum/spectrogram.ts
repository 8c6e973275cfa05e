import { checkPositive } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import { checkSegments } from './check-segments.js';
import { lineFrequencies } from './line-frequencies.js';
import { segmentPowers } from './segment-powers.js';
import { segmentStarts } from './segment-starts.js';
import type { Spectrogram, WelchOptions } from './types.js';
import { windowSamples } from './window-samples.js';

/**
 * Power spectral density over time: the periodograms that {@link welch} averages, each at the middle of its segment.
 *
 * S(k, t) = 2 |X(k, t)|² / (fs Σw²), without the 2 at 0 and at half the sampling rate
 *
 * @param samples - at least `segmentLength` of them, uniform in time
 * @param sampleRate - fs, Hz, greater than 0
 * @param options - how the samples are cut; see {@link WelchOptions}
 * @returns time in s, frequency in Hz, density in unit²/Hz
 * @throws RangeError as {@link welch} does
 * @remarks What changes within a segment is smeared over it: a line that moves by r Hz/s is about r × segment Hz wide, so the
 *   sharpest picture of a run-up has segments of 1/√r s. For orders through a run-up see {@link trackOrders}.
 * @example
 * ```ts
 * const samples = Float64Array.from({ length: 4000 }, (_, n) => 2 * Math.sin(2 * Math.PI * 50 * n / 1000));
 * const { time, density } = spectrogram(samples, 1000, { segmentLength: 1000 });
 * time[1] // → 1.0
 * density[1][50] // → 1.3333
 * ```
 */
export function spectrogram(
  samples: ArrayLike<number>,
  sampleRate: number,
  options: WelchOptions,
): Spectrogram {
  checkPositive('spectrogram: sampleRate', sampleRate);
  const { segmentLength, overlap = 0.5, window: name = 'hann', detrend = 'constant', gaps = [] } = options;
  checkSegments(samples, { ...options, caller: 'spectrogram' });
  const window = windowSamples(name, segmentLength);
  const step = segmentLength - Math.floor(overlap * segmentLength);
  const starts = segmentStarts(samples.length, { segmentLength, step, gaps });
  if (starts.length === 0)
    throw refusal('spectrogram: segmentLength', 'short enough to fit between the gaps', segmentLength);
  const scale = 1 / (sampleRate * window.reduce((total, w) => total + w * w, 0));
  const powers = segmentPowers(samples, { starts, window, detrend });
  return {
    time: Float64Array.from(starts, (start) => (start + segmentLength / 2) / sampleRate),
    frequency: lineFrequencies(segmentLength, sampleRate),
    density: powers.map((power) =>
      power.map((value, k) => (k === 0 || 2 * k === segmentLength ? 1 : 2) * value * scale),
    ),
  };
}
