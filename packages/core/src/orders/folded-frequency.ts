import { checkFinite, checkPositive } from '../internal/checks.js';

/**
 * Where sampling shows a frequency.
 *
 * f_a = |f − fs · round(f / fs)|
 *
 * @param frequency - f, Hz
 * @param sampleRate - fs, Hz, greater than 0
 * @returns Hz, from 0 to half the sampling rate
 * @throws RangeError for a rate that is not greater than 0 or a frequency that is not finite
 * @example
 * ```ts
 * foldedFrequency(250, 200) // → 50 Hz
 * foldedFrequency(133.33, 100) // → 33.33 Hz
 * ```
 * @see Oppenheim and Schafer, Discrete-Time Signal Processing, on sampling and aliasing
 */
export function foldedFrequency(frequency: number, sampleRate: number): number {
  checkFinite('foldedFrequency: frequency', frequency);
  checkPositive('foldedFrequency: sampleRate', sampleRate);
  return Math.abs(frequency - sampleRate * Math.round(frequency / sampleRate));
}
