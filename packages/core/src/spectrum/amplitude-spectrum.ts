import { checkPositive } from '../internal/checks.js';
import { averagePower } from './average-power.js';
import { lineFrequencies } from './line-frequencies.js';
import type { AmplitudeSpectrum, AmplitudeSpectrumOptions } from './types.js';

/**
 * Peak amplitude of the sines in a signal, line by line.
 *
 * A(k) = 2 √(mean |X(k)|²) / Σw, without the 2 at 0 and at half the sampling rate
 *
 * @param samples - uniform in time
 * @param sampleRate - fs, Hz, greater than 0
 * @param options - `segmentLength` shorter than the samples averages the power of several segments
 * @returns frequency in Hz from 0 to half the rate, peak amplitude in the unit of the samples
 * @throws RangeError as {@link welch} does
 * @remarks A sine half-way between two lines reads low by the window's scallop loss, and two lines share it:
 *   {@link findPeaks} corrects for that. Noise reads higher the wider the lines are; compare noise as density.
 * @example
 * ```ts
 * const samples = Float64Array.from({ length: 1000 }, (_, n) => 0.3 * Math.cos(2 * Math.PI * 20 * n / 500));
 * amplitudeSpectrum(samples, 500, { window: 'flat-top' }).amplitude[40] // → 0.3000
 * ```
 */
export function amplitudeSpectrum(
  samples: ArrayLike<number>,
  sampleRate: number,
  options: AmplitudeSpectrumOptions = {},
): AmplitudeSpectrum {
  checkPositive('amplitudeSpectrum: sampleRate', sampleRate);
  const segmentLength = options.segmentLength ?? samples.length;
  const { power, sum } = averagePower(samples, { ...options, segmentLength, caller: 'amplitudeSpectrum' });
  const amplitude = power.map(
    (value, k) => ((k === 0 || 2 * k === segmentLength ? 1 : 2) * Math.sqrt(value)) / sum,
  );
  return { frequency: lineFrequencies(segmentLength, sampleRate), amplitude };
}
