import { checkPositive } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import type { Recording } from '../recording/types.js';
import { expectedOrders } from './expected-orders.js';
import { followSpeed } from './follow-speed.js';
import { measureTrack } from './measure-track.js';
import { reduceRate } from './reduce-rate.js';
import { shaftAngle } from './shaft-angle.js';
import { sharpenSpeed } from './sharpen-speed.js';
import { trackConfidence } from './track-confidence.js';
import type { OrderTrack, TrackOptions } from './types.js';

/**
 * Amplitude of orders through a run-up, a coast-down or a drift.
 *
 * A(o, t) = |2 Σ w x ω e^(−ioθ)| / Σ w ω over shaft angle θ = ∫ ω dt, w a Hann window of 8 turns or more
 *
 * @param recording - any length; the speed may move as it likes as long as it moves little within 8 turns
 * @param options - the orders, and the speed if it is known; otherwise it is followed in the recording: the smooth path on which
 *   the orders of a shaft stand highest above the noise, made exact by their phase
 * @returns time in s, speed in rad/s, and for each order its amplitude (peak) over time, with its standard error
 * @throws RangeError for orders, speeds or a range out of their domain, no channel, or a recording of less than 8 turns
 * @remarks The transform is over shaft angle, so an order keeps its amplitude however the speed moves; a resonance that is passed
 *   within 8 turns reads lower and wider than it is. An order beyond half the sampling rate is followed where it folds to, as far as
 *   the phone's own filter let it through; where it crosses another one, 0 or half the rate, `hidden` says so. A speed that
 *   is followed can be half or double the true one, and beyond half the rate its mirror image: give a `range`.
 * @example
 * ```ts
 * const angle = (t) => 2 * Math.PI * (10 * t + t * t);
 * const samples = Float64Array.from({ length: 4000 }, (_, n) => 0.8 * Math.sin(angle(n / 200)) + 0.3 * Math.sin(2 * angle(n / 200)));
 * const recording = { name: 'run-up', sampleRate: 200, channels: [{ name: 'x', unit: 'm/s²', samples }],
 *   sampling: { kind: 'motion', gaps: [] } };
 * const speed = [{ time: 0, speed: 2 * Math.PI * 10 }, { time: 20, speed: 2 * Math.PI * 50 }];
 * const track = trackOrders(recording, { orders: [1, 2], speed });
 * track.orders[0].amplitude[60] // → 0.80
 * track.orders[1].amplitude[60] // → 0.30
 * ```
 * @see Fyfe and Munck, "Analysis of computed order tracking", Mechanical Systems and Signal Processing 11(2), 1997
 */
export function trackOrders(recording: Recording, options: TrackOptions): OrderTrack {
  checkOrders(options.orders);
  const { range, line = {} } = options;
  const kind = recording.sampling.kind;
  const limits = range === undefined ? defaultRange(recording) : checkRange(range);
  if (recording.channels.length === 0)
    throw refusal('trackOrders: recording', 'one with a channel or more', 'none');
  if (options.speed !== undefined) shaftAngle('trackOrders: speed', options.speed);
  const fastest =
    options.speed === undefined ? limits[1] : Math.max(...options.speed.map(({ speed }) => speed)) / TURN;
  const slow = reduceRate(recording, fastest * (1 + Math.max(...options.orders, 6)));
  if (options.speed !== undefined)
    return measureTrack(slow, { options, points: options.speed, confidence: 1 });
  const expected = expectedOrders(line, kind);
  const followed = followSpeed(slow, { range: limits, expected });
  const guess = Array.from(followed.time, (time, i) => ({
    time,
    speed: TURN * (followed.frequency[i] ?? 0),
  }));
  if (guess.length === 0)
    throw refusal('trackOrders: recording', 'long enough between its gaps', 'pieces too short');
  const orders = expected.filter(({ mayFold }) => mayFold).map(({ order }) => order);
  const points = sharpenSpeed(slow, { points: guess, orders });
  return measureTrack(slow, { options, points, confidence: trackConfidence(followed) });
}

const TURN = 2 * Math.PI;

function checkOrders(orders: readonly number[]): void {
  if (orders.length === 0) throw refusal('trackOrders: orders', 'a list of one order or more', orders);
  orders.forEach((order, i) => {
    checkPositive(`trackOrders: orders[${i}]`, order);
    if (orders.indexOf(order) !== i) throw refusal(`trackOrders: orders[${i}]`, 'unlike the others', order);
  });
}

/** Hz */
function checkRange([from, to]: readonly [number, number]): readonly [number, number] {
  if (!(from > 0 && to > from && Number.isFinite(to)))
    throw refusal('trackOrders: range', 'two rising finite numbers greater than 0', `${from} and ${to}`);
  return [from / TURN, to / TURN];
}

/** Hz */
function defaultRange({ sampleRate, sampling }: Recording): readonly [number, number] {
  const lowest = Math.min(sampling.kind === 'sound' ? 8 : 3, sampleRate / 16);
  return [lowest, Math.min(0.48 * sampleRate, 400)];
}
