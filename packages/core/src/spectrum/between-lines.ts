import type { FourierPlan } from './fourier-plan.js';

/**
 * Averaged power half-way between its lines as well, which are twice as many then.
 *
 * The inverse transform of a power is the autocorrelation r of the segment, and a segment of half the transform's length has
 * all of it: P(k + ½) = Σ r(n) e^(−πin/L) e^(−2πikn/L), with n the signed lag. Exact but for rounding.
 *
 * @param power - on lines 0 … L/2 of a transform at least twice as long as the segment
 * @param plan - of that length L, even
 * @returns power on the lines 0 … L of a transform twice as long
 */
export function betweenLines(power: Float64Array, plan: FourierPlan): Float64Array {
  const { length } = plan;
  const data = new Float64Array(2 * length);
  const lags = new Float64Array(2 * length);
  for (let k = 0; k < power.length; k++) {
    data[2 * k] = power[k] ?? 0;
    data[2 * ((length - k) % length)] = power[k] ?? 0;
  }
  plan.transform(lags, data);
  data.fill(0);
  for (let n = 0; n < length; n++) {
    const lag = n < length / 2 ? n : n - length;
    const value = 2 * n === length ? 0 : (lags[2 * n] ?? 0) / length;
    data[2 * n] = value * Math.cos((Math.PI * lag) / length);
    data[2 * n + 1] = -value * Math.sin((Math.PI * lag) / length);
  }
  plan.transform(lags, data);
  const all = new Float64Array(length + 1);
  for (let k = 0; k <= length; k++) {
    all[k] = k % 2 === 0 ? (power[k / 2] ?? 0) : Math.max(0, lags[k - 1] ?? 0);
  }
  return all;
}
