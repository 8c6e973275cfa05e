import { checkWhole } from '../internal/checks.js';
import type { WindowName } from './types.js';
import { windowCoefficients } from './window-coefficients.js';

/**
 * Samples of a periodic window, the form that spectra need.
 *
 * w(n) = Σ (−1)ᵐ aₘ cos(2πmn/N), n = 0 … N − 1
 *
 * @param name - which window
 * @param length - N, samples, 1 or more
 * @returns the N samples; the largest is 1 for an even N, flat-top 1.000000003
 * @throws RangeError for an unknown name or a length that is not a whole number of at least 1
 * @remarks The periodic form leaves out the last point of the symmetric one (`sym=False` in scipy's terms).
 * @example
 * ```ts
 * windowSamples('hann', 4) // → [0, 0.5, 1, 0.5]
 * ```
 * @see Harris, "On the use of windows for harmonic analysis with the discrete Fourier transform", Proc. IEEE 66(1), 1978
 */
export function windowSamples(name: WindowName, length: number): Float64Array {
  checkWhole('windowSamples: length', length, [1, Infinity]);
  const coefficients = windowCoefficients('windowSamples: name', name);
  const samples = new Float64Array(length);
  for (let n = 0; n < length; n++) {
    let sum = 0;
    for (let m = 0; m < coefficients.length; m++) {
      const term = (coefficients[m] ?? 0) * Math.cos((2 * Math.PI * m * n) / length);
      sum += m % 2 === 0 ? term : -term;
    }
    samples[n] = sum;
  }
  return samples;
}
