import { refusal } from '../internal/refuse.js';
import { checkFiniteSamples } from './check-finite-samples.js';
import type { Levels } from './types.js';

/**
 * Root mean square, peak, crest factor and kurtosis of a signal about its mean.
 *
 * rms = √(m₂), crest = max |x − x̄| / rms, kurtosis = m₄ / m₂², mₚ the mean of (x − x̄)ᵖ
 *
 * @param samples - at least one
 * @returns in the unit of the samples; the two ratios without unit
 * @throws RangeError for no samples or one that is not finite
 * @remarks Kurtosis and crest factor speak of knocks only where the sampling is fast enough to show them; clipping lowers both.
 * @example
 * ```ts
 * const sine = Float64Array.from({ length: 1000 }, (_, n) => 9.81 + 2 * Math.sin(2 * Math.PI * n / 100));
 * const { rms, crestFactor, kurtosis } = levels(sine);
 * rms // → 1.41421
 * crestFactor // → 1.41421
 * kurtosis // → 1.5000
 * ```
 */
export function levels(samples: ArrayLike<number>): Levels {
  const count = samples.length;
  if (count === 0) throw refusal('levels: samples', 'at least 1 long', 0);
  checkFiniteSamples('levels: samples', samples);
  let sum = 0;
  for (let n = 0; n < count; n++) sum += samples[n] ?? 0;
  const mean = sum / count;
  let [squares, fourths, peak] = [0, 0, 0];
  for (let n = 0; n < count; n++) {
    const square = ((samples[n] ?? 0) - mean) ** 2;
    squares += square;
    fourths += square * square;
    peak = Math.max(peak, square);
  }
  const moment = squares / count;
  const moves = moment > (1e-14 * mean) ** 2;
  return {
    mean,
    rms: Math.sqrt(moment),
    peak: Math.sqrt(peak),
    crestFactor: moves ? Math.sqrt(peak / moment) : NaN,
    kurtosis: moves ? fourths / count / moment ** 2 : NaN,
  };
}
