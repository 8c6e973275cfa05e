import { checkWhole } from '../internal/checks.js';
import type { WindowFacts, WindowName } from './types.js';
import { windowCoefficients } from './window-coefficients.js';
import { windowResponse } from './window-response.js';
import { windowSamples } from './window-samples.js';

/**
 * What a periodic window does to a sine and to noise.
 *
 * coherent gain Σw / N · equivalent noise bandwidth N Σw² / (Σw)² · scallop loss −20 log₁₀ |W(½)| / |W(0)|
 *
 * @param name - which window
 * @param length - N, samples, 2 or more
 * @returns gain as a ratio, bandwidth in spectral lines, loss in dB
 * @throws RangeError for an unknown name or a length that is not a whole number of at least 2
 * @example
 * ```ts
 * windowFacts('hann', 4096).equivalentNoiseBandwidth // → 1.5000
 * windowFacts('hann', 4096).scallopLoss // → 1.4236
 * ```
 * @see Harris, "On the use of windows for harmonic analysis with the discrete Fourier transform", Proc. IEEE 66(1), 1978, table 1
 */
export function windowFacts(name: WindowName, length: number): WindowFacts {
  checkWhole('windowFacts: length', length, [2, Infinity]);
  const coefficients = windowCoefficients('windowFacts: name', name);
  const samples = windowSamples(name, length);
  const sum = samples.reduce((total, w) => total + w, 0);
  const squares = samples.reduce((total, w) => total + w * w, 0);
  return {
    coherentGain: sum / length,
    equivalentNoiseBandwidth: (length * squares) / (sum * sum),
    scallopLoss: -20 * Math.log10(windowResponse(coefficients, length, 0.5)),
  };
}
