import { checkPositive, checkWhole } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import { segmentPowers } from '../spectrum/segment-powers.js';
import { windowSamples } from '../spectrum/window-samples.js';
import { reduceSamples } from './reduce-samples.js';
import { resampleByAngle } from './resample-by-angle.js';
import { shaftAngle } from './shaft-angle.js';
import type { OrderMap, OrderMapOptions, SpeedAtTime } from './types.js';

/**
 * Amplitude of every order through a run, a row for each stretch of turns.
 *
 * A(o, θ) = 2 |X| / Σw, X the Hann-windowed transform of the signal over equal steps of shaft angle
 *
 * @param samples - uniform in time
 * @param sampleRate - Hz, greater than 0
 * @param options - `speed` in rad/s over time in s, the highest order, and the turns in a row
 * @returns rows half overlapping; orders from 0 to the highest in steps of 1 / turns; amplitude (peak) in the unit of the samples
 * @throws RangeError for a rate, speed, order or number of turns out of its domain, or a run of fewer turns than one row
 * @remarks In the map an order is a straight line however the speed moves, and a resonance is a bow across it. Orders beyond half
 *   the sampling rate are not shown where they belong.
 * @example
 * ```ts
 * const angle = (t) => 100 * t + 10 * t * t;
 * const samples = Float64Array.from({ length: 5000 }, (_, n) => 0.5 * Math.cos(2 * angle(n / 500)));
 * const map = orderMap(samples, 500, { speed: [{ time: 0, speed: 100 }, { time: 10, speed: 300 }], highest: 4 });
 * map.order[32] // → 2
 * map.amplitude[5][32] // → 0.500
 * ```
 */
export function orderMap(
  samples: ArrayLike<number>,
  sampleRate: number,
  { speed, highest = 10, turns = 16 }: OrderMapOptions,
): OrderMap {
  checkPositive('orderMap: sampleRate', sampleRate);
  checkPositive('orderMap: highest', highest);
  checkWhole('orderMap: turns', turns, [4, Infinity]);
  const shaft = shaftAngle('orderMap: speed', speed);
  const even = evenly(samples, sampleRate, { speed, highest });
  const { perTurn } = even;
  const length = turns * perTurn;
  if (even.samples.length < length)
    throw refusal('orderMap: samples', `${turns} turns long or more`, (even.samples.length - 1) / perTurn);
  const starts: number[] = [];
  for (let start = 0; start + length <= even.samples.length; start += length / 2) starts.push(start);
  const window = windowSamples('hann', length);
  const sum = window.reduce((total, w) => total + w, 0);
  const time = Float64Array.from(starts, (start) => even.time[start + length / 2] ?? 0);
  const count = Math.floor(highest * turns) + 1;
  return {
    time,
    speed: time.map((at) => shaft.speedAt(at)),
    order: Float64Array.from({ length: count }, (_, k) => k / turns),
    amplitude: segmentPowers(even.samples, { starts, window, detrend: 'constant' }).map((power) =>
      power.slice(0, count).map((value, k) => ((k === 0 ? 1 : 2) * Math.sqrt(value)) / sum),
    ),
  };
}

/** So many samples a turn that at the lowest speed none of time is skipped: nothing can fold, and no order is cut off. */
function evenly(
  samples: ArrayLike<number>,
  sampleRate: number,
  { speed, highest }: { readonly speed: readonly SpeedAtTime[]; readonly highest: number },
): { readonly samples: Float64Array; readonly time: Float64Array; readonly perTurn: number } {
  const speeds = speed.map((point) => point.speed / (2 * Math.PI));
  const reduced = reduceSamples(samples, sampleRate, highest * Math.max(...speeds));
  const least = Math.max(2.5 * highest + 2, reduced.sampleRate / Math.min(...speeds));
  const perTurn = 2 ** Math.ceil(Math.log2(Math.min(MOST_PER_TURN, least)));
  return { ...resampleByAngle(reduced.samples, reduced.sampleRate, { speed, perTurn }), perTurn };
}

/** Below the speed at which this is too few, high orders are weakened. */
const MOST_PER_TURN = 4096;
