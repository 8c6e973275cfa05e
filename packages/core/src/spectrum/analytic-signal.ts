import { refusal } from '../internal/refuse.js';
import { checkFiniteSamples } from './check-finite-samples.js';
import { createFourierPlan } from './fourier-plan.js';
import { inverseTransform } from './inverse-transform.js';
import type { AnalyticSignal } from './types.js';

/**
 * A signal with its Hilbert transform, by the discrete Fourier transform of all of it.
 *
 * z = F⁻¹(H X), H = 1 at 0 and at half the rate, 2 between, 0 above
 *
 * @param samples - 2 or more, uniform in time
 * @returns the signal, its quadrature and its envelope, each as long as the samples
 * @throws RangeError for fewer than 2 samples or one that is not finite
 * @remarks The transform takes the samples for one period: the envelope errs near the ends unless both meet. An envelope
 *   means something for one narrow band only; {@link bandEnvelope} limits the band first and tends the ends.
 * @example
 * ```ts
 * const beat = Float64Array.from({ length: 200 }, (_, n) =>
 *   (1 + 0.5 * Math.cos(2 * Math.PI * n / 100)) * Math.cos(2 * Math.PI * n / 10));
 * const { envelope } = analyticSignal(beat);
 * envelope[0] // → 1.5000
 * envelope[50] // → 0.5000
 * ```
 * @see Marple, "Computing the discrete-time 'analytic' signal via FFT", IEEE Trans. Signal Processing 47(9), 1999
 */
export function analyticSignal(samples: ArrayLike<number>): AnalyticSignal {
  const { length } = samples;
  if (length < 2) throw refusal('analyticSignal: samples', 'at least 2 long', length);
  checkFiniteSamples('analyticSignal: samples', samples);
  const plan = createFourierPlan(length);
  const data = new Float64Array(2 * length);
  const out = new Float64Array(2 * length);
  for (let n = 0; n < length; n++) data[2 * n] = samples[n] ?? 0;
  plan.transform(out, data);
  for (let k = 1; k < length; k++) {
    const gain = 2 * k < length ? 2 : 2 * k === length ? 1 : 0;
    out[2 * k] = gain * (out[2 * k] ?? 0);
    out[2 * k + 1] = gain * (out[2 * k + 1] ?? 0);
  }
  inverseTransform(plan, data, out);
  const real = Float64Array.from(samples);
  const imaginary = Float64Array.from({ length }, (_, n) => data[2 * n + 1] ?? 0);
  return { real, imaginary, envelope: real.map((x, n) => Math.hypot(x, imaginary[n] ?? 0)) };
}
