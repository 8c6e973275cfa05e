import { checkPositive } from '../internal/checks.js';
import { averagePower } from './average-power.js';
import { lineFrequencies } from './line-frequencies.js';
import type { Density, WelchOptions } from './types.js';

/**
 * Power spectral density by averaging the periodograms of overlapping, windowed segments.
 *
 * S(k) = 2 · mean |X(k)|² / (fs Σw²), without the 2 at 0 and at half the sampling rate
 *
 * @param samples - at least `segmentLength` of them, uniform in time
 * @param sampleRate - fs, Hz, greater than 0
 * @param options - how the samples are cut; see {@link WelchOptions}
 * @returns frequency in Hz from 0 to half the rate, density in unit²/Hz
 * @throws RangeError for a segment longer than the samples, an overlap outside 0 … 1, or gaps that leave no whole segment
 * @remarks Samples after the last whole segment are not used. The mean square of a stationary signal is the sum of
 *   density times line spacing.
 * @example
 * ```ts
 * const samples = Float64Array.from({ length: 4000 }, (_, n) => 2 * Math.sin(2 * Math.PI * 50 * n / 1000));
 * const { frequency, density } = welch(samples, 1000, { segmentLength: 1000 });
 * frequency[50] // → 50 Hz
 * density[50] // → 1.3333
 * ```
 * @see Welch, "The use of fast Fourier transform for the estimation of power spectra", IEEE Trans. Audio 15(2), 1967
 */
export function welch(samples: ArrayLike<number>, sampleRate: number, options: WelchOptions): Density {
  checkPositive('welch: sampleRate', sampleRate);
  const { power, sumOfSquares } = averagePower(samples, { ...options, caller: 'welch' });
  const { segmentLength } = options;
  const scale = 1 / (sampleRate * sumOfSquares);
  const density = power.map((value, k) => (k === 0 || 2 * k === segmentLength ? 1 : 2) * value * scale);
  return { frequency: lineFrequencies(segmentLength, sampleRate), density };
}
