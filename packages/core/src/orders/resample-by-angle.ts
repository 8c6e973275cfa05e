import { checkPositive, checkWhole } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import { createInterpolator } from './interpolate-samples.js';
import { shaftAngle } from './shaft-angle.js';
import type { AngleSamples, AngleSamplingOptions } from './types.js';

/**
 * A signal at equal steps of shaft angle instead of time.
 *
 * θ(t) = ∫ ω dt, tⱼ = θ⁻¹(2πj / N); ω straight between the points given, so that θ is a quadratic there
 *
 * @param samples - uniform in time
 * @param sampleRate - Hz, greater than 0
 * @param options - `speed` in rad/s over time in s, and the samples per turn
 * @returns angle in rad, time in s and samples, from the first sample to the last
 * @throws RangeError for a rate, speed or count out of its domain, or samples that span no step of angle
 * @remarks Where the steps are wider than those of time, the signal is cut off above what they can show at the lowest speed.
 *   Samples beyond half the rate have folded before and are turned into something else here: {@link trackOrders} reads them.
 * @example
 * ```ts
 * const angle = (t) => 50 * t + 10 * t * t;
 * const samples = Float64Array.from({ length: 2000 }, (_, n) => Math.cos(3 * angle(n / 1000)));
 * const even = resampleByAngle(samples, 1000, { speed: [{ time: 0, speed: 50 }, { time: 2, speed: 90 }], perTurn: 24 });
 * even.time[12] // → 0.06206
 * even.samples[60] // → -1.000
 * ```
 * @see Fyfe and Munck, "Analysis of computed order tracking", Mechanical Systems and Signal Processing 11(2), 1997
 */
export function resampleByAngle(
  samples: ArrayLike<number>,
  sampleRate: number,
  { speed, perTurn }: AngleSamplingOptions,
): AngleSamples {
  checkPositive('resampleByAngle: sampleRate', sampleRate);
  checkWhole('resampleByAngle: perTurn', perTurn, [2, Infinity]);
  const shaft = shaftAngle('resampleByAngle: speed', speed);
  const end = (samples.length - 1) / sampleRate;
  const count = Math.floor((shaft.angleAt(end) * perTurn) / (2 * Math.PI)) + 1;
  if (!(count >= 2))
    throw refusal('resampleByAngle: samples', 'long enough for a step of angle', samples.length);
  const slowest = Math.min(...speed.map((point) => point.speed));
  const cutoff = Math.min(1, (perTurn * slowest) / (2 * Math.PI) / sampleRate);
  const { valueAt } = createInterpolator(Math.max(cutoff, 0.001));
  const angle = Float64Array.from({ length: count }, (_, j) => (2 * Math.PI * j) / perTurn);
  const time = angle.map((at) => shaft.timeAt(at));
  return { angle, time, samples: time.map((at) => valueAt(samples, at * sampleRate)) };
}
