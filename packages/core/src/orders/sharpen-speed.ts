import type { Recording } from '../recording/types.js';
import { foldedFrequency } from './folded-frequency.js';
import { orderPhasors } from './order-phasors.js';
import type { Phasors } from './order-phasors.js';
import { shaftAngle } from './shaft-angle.js';
import type { SpeedAtTime } from './types.js';

/** Turns over which the phase is read: long enough to part the orders, short enough for a first guess that drifts. */
const TURNS = 4;
const ROUNDS = 4;
/** Power over noise beyond which an order is no more to be trusted. */
const MOST_TRUST = 1e4;
/** Points on either side over which the first guess is smoothed. */
const SMOOTH = 4;

/**
 * A followed speed made exact by the phase of its orders: an order that is followed too slowly turns forward, by o δω a second.
 *
 * δω = Σ |C|² o Δφ / Δt / Σ |C|² o², over orders and channels, smoothed over three steps
 *
 * @param points - the first guess
 * @param orders - whole orders to use
 */
export function sharpenSpeed(
  recording: Recording,
  { points, orders }: { readonly points: readonly SpeedAtTime[]; readonly orders: readonly number[] },
): SpeedAtTime[] {
  let current = smooth(points, SMOOTH);
  for (let round = 0; round < ROUNDS; round++) current = smooth(sharpenOnce(recording, current, orders), 1);
  return current;
}

function sharpenOnce(
  { channels, sampleRate, sampling }: Recording,
  points: readonly SpeedAtTime[],
  orders: readonly number[],
): SpeedAtTime[] {
  const times = Float64Array.from(points, ({ time }) => time);
  const moments = new Float64Array(points.length);
  const weights = new Float64Array(points.length);
  const shaft = shaftAngle('trackOrders: speed', points);
  for (const { samples } of channels) {
    const options = { sampleRate, shaft, times, turnsAt: () => TURNS, orders, gaps: sampling.gaps };
    orderPhasors(samples, options).forEach(({ real, imaginary, noise }, at) => {
      const order = orders[at] ?? 1;
      for (let i = 0; i + 1 < times.length; i++) {
        if (crosses(orders, at, { speed: points[i]?.speed ?? 0, sampleRate })) continue;
        const step = phaseStep({ real, imaginary, noise }, i);
        if (step === undefined) continue;
        const turning = step.phase / ((times[i + 1] ?? 0) - (times[i] ?? 0));
        for (const end of [i, i + 1]) {
          moments[end] = (moments[end] ?? 0) + step.trust * order * turning;
          weights[end] = (weights[end] ?? 0) + step.trust * order * order;
        }
      }
    });
  }
  return points.map(({ time, speed }, i) => {
    const correction = (weights[i] ?? 0) > 0 ? (moments[i] ?? 0) / (weights[i] ?? 1) : 0;
    return { time, speed: speed + Math.max(-0.03 * speed, Math.min(0.03 * speed, correction)) };
  });
}

/** rad by which an order turns from one time to the next, and how far that can be trusted; undefined where noise hides it. */
function phaseStep(
  { real, imaginary, noise }: Phasors,
  i: number,
): { phase: number; trust: number } | undefined {
  const [a = 0, c = 0] = real.subarray(i, i + 2);
  const [b = 0, d = 0] = imaginary.subarray(i, i + 2);
  const [before = 0, after = 0] = noise.subarray(i, i + 2);
  const power = Math.hypot(a, b) * Math.hypot(c, d);
  if (!(power > 2 * (before + after))) return undefined;
  return {
    phase: Math.atan2(a * d - b * c, a * c + b * d),
    trust: Math.min(MOST_TRUST, power / Math.max(before + after, power / MOST_TRUST)),
  };
}

/** Whether a likelier order shows on the same line, whose phase would turn at another rate. */
function crosses(
  orders: readonly number[],
  at: number,
  { speed, sampleRate }: { speed: number; sampleRate: number },
): boolean {
  const shaft = speed / (2 * Math.PI);
  const place = (order: number): number => foldedFrequency(order * shaft, sampleRate);
  const own = place(orders[at] ?? 1);
  // The window of a few turns is four lines wide.
  const width = (4 * shaft) / TURNS;
  return own < width / 2 || orders.slice(0, at).some((other) => Math.abs(place(other) - own) < width);
}

/** Local least-squares line under triangular weights, so that a steady rise stays what it is up to the ends. */
function smooth(points: readonly SpeedAtTime[], reach: number): SpeedAtTime[] {
  return points.map(({ time }, i) => {
    let [w, wx, wxx, wy, wxy] = [0, 0, 0, 0, 0];
    for (let j = Math.max(0, i - reach); j <= Math.min(points.length - 1, i + reach); j++) {
      const weight = 1 - Math.abs(i - j) / (reach + 1);
      const x = (points[j]?.time ?? time) - time;
      const y = points[j]?.speed ?? 0;
      w += weight;
      wx += weight * x;
      wxx += weight * x * x;
      wy += weight * y;
      wxy += weight * x * y;
    }
    const determinant = w * wxx - wx * wx;
    return { time, speed: determinant > 0 ? (wxx * wy - wx * wxy) / determinant : wy / w };
  });
}
