import { refusal } from '../internal/refuse.js';
import type { WindowName } from './types.js';

/** a₀, a₁, … of w(n) = Σ (−1)ᵐ aₘ cos(2πmn/N). */
const COEFFICIENTS: Readonly<Record<WindowName, readonly number[]>> = {
  rectangular: [1],
  hann: [0.5, 0.5],
  hamming: [0.54, 0.46],
  blackman: [0.42, 0.5, 0.08],
  // Harris, "On the use of windows for harmonic analysis with the discrete Fourier transform", Proc. IEEE 66(1), 1978, 4-term.
  'blackman-harris': [0.35875, 0.48829, 0.14128, 0.01168],
  // D'Antona and Ferrero, Digital Signal Processing for Measurement Systems, 2006, 5-term; the figures scipy uses.
  'flat-top': [0.21557895, 0.41663158, 0.277263158, 0.083578947, 0.006947368],
};

/**
 * The cosine terms of a window.
 *
 * @param where - the public function and argument that the name came from, for the refusal
 * @throws RangeError for a name that is not a window's
 */
export function windowCoefficients(where: string, name: WindowName): readonly number[] {
  if (!Object.hasOwn(COEFFICIENTS, name)) {
    throw refusal(where, `one of ${Object.keys(COEFFICIENTS).join(', ')}`, name);
  }
  return COEFFICIENTS[name];
}
