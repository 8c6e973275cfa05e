import { checkPositive } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import { createRandom } from '../numerics/random.js';
import { orderAmplitudes } from '../orders/order-amplitudes.js';
import type { OrderAmplitudes } from '../orders/types.js';
import type { Recording } from '../recording/types.js';
import { bootstrapChange } from './bootstrap-change.js';
import { channelGroups, type ChannelGroup } from './channel-groups.js';
import { compareGuards, type Guards } from './compare-guards.js';
import type { ComparedSide } from './compared-side.js';
import { describeChange } from './describe-change.js';
import { planSegments, segmentPowers } from './order-segments.js';
import type {
  CompareRecordingsOptions,
  ComparisonRow,
  RecordingComparison,
  SpeedPair,
} from './compare-types.js';

const BASE_ORDERS: readonly number[] = [1, 2, 3, 4];
/** Turns in a segment: enough to part orders that are half a turn apart, few enough to leave many segments. */
const FEWEST_TURNS = 8;
const MOST_TURNS = 32;
const WANTED_SEGMENTS = 24;
/** Our choice: within one steady run of a machine, stretches of 20 s differ by 1 to 2 %. */
const REPEATABILITY = 0.02;
const TURN = 2 * Math.PI;

/**
 * What a change to the line did: the same orders at the same speed, before and after, with the uncertainty of each change.
 *
 * ratio = A_after / A_before; its interval by a segment bootstrap: segments of 8 to 32 turns drawn anew from each
 * recording, in runs
 *
 * @param before - the recording made first; left as it is
 * @param after - one of the same kind made after the change; left as it is
 * @param options - `speed` in rad/s, of both or of each, and more, see {@link CompareRecordingsOptions}
 * @returns a row for each order with its change, its interval and a verdict, of which 'no difference shown' is one; and
 *   in `statements` what the two recordings must be taken with. Where they are not alike the verdict is withheld
 * @throws RangeError for a speed, order or option out of its domain, or recordings without a unit in common
 * @remarks The interval holds the scatter within each recording, and as much between two runs as `repeatability` says: make the
 *   same run twice to learn it. At 95 % at most one row in twenty that did not change is called changed.
 * @example
 * ```ts
 * let state = 7;
 * const noise = () => (state = (16807 * state) % 2147483647) / 2147483647 - 0.5;
 * const run = (amplitude) => ({ name: 'run', sampleRate: 400, sampling: { kind: 'motion', gaps: [], clipping: [] },
 *   channels: [{ name: 'x', unit: 'm/s²', samples: Float64Array.from({ length: 8000 }, (_, n) =>
 *     amplitude * Math.sin((2 * Math.PI * 40 * n) / 400) + noise()) }] });
 * const { rows } = compareRecordings(run(1), run(0.5), { speed: 2 * Math.PI * 40, orders: [1, 2] });
 * rows[0].ratio // → 0.50
 * rows.map(({ verdict }) => verdict) // → ['lower', 'no difference shown']
 * ```
 * @see Efron and Tibshirani, "An Introduction to the Bootstrap", 1993, §8.6
 */
export function compareRecordings(
  before: Recording,
  after: Recording,
  options: CompareRecordingsOptions,
): RecordingComparison {
  const settings = settle(options);
  const groups = channelGroups([before, after], settings.channels);
  const sides = [
    measure(before, settings.speed.before, settings.orders),
    measure(after, settings.speed.after, settings.orders),
  ] as const;
  const speed = { before: sides[0].measured.speed, after: sides[1].measured.speed };
  const guards = compareGuards(sides, { ...settings, groups });
  const rows = settings.orders.flatMap((order) =>
    groups.map((group, i) => compareOrder(sides, { order, group, guards, settings, stream: i })),
  );
  return { rows, speed, statements: guards.statements };
}

interface Settings {
  readonly speed: SpeedPair;
  readonly orders: readonly number[];
  readonly seed: number;
  readonly channels: 'together' | 'apart';
  readonly tolerance: number;
  readonly repeatability: number;
  readonly confidence: number;
}

function settle(options: CompareRecordingsOptions): Settings {
  const { speed, seed = 1, channels = 'together', tolerance = 0.02 } = options;
  const { repeatability = REPEATABILITY, confidence = 0.95 } = options;
  const pair = typeof speed === 'number' ? { before: speed, after: speed } : speed;
  checkPositive('compareRecordings: speed', pair.before);
  checkPositive('compareRecordings: speed', pair.after);
  if (!(confidence > 0 && confidence < 1)) {
    throw refusal('compareRecordings: confidence', 'between 0 and 1', confidence);
  }
  for (const [name, value] of Object.entries({ tolerance, repeatability })) {
    if (!(value >= 0 && value < 1))
      throw refusal(`compareRecordings: ${name}`, 'at least 0 and below 1', value);
  }
  return { speed: pair, orders: ordersOf(options), seed, channels, tolerance, repeatability, confidence };
}

function ordersOf({ orders, line }: CompareRecordingsOptions): number[] {
  orders?.forEach((order, i) => {
    checkPositive(`compareRecordings: orders[${i}]`, order);
  });
  const blades = line?.propeller?.blades;
  const wanted = orders ?? [...BASE_ORDERS, ...(blades === undefined ? [] : [blades])];
  return [...new Set(wanted)].sort((a, b) => a - b);
}

function measure(recording: Recording, speed: number, orders: readonly number[]): ComparedSide {
  const measured = orderAmplitudes({ recording, speed, orders });
  const turns = (durationOf(recording) * measured.speed) / TURN;
  const each = Math.max(FEWEST_TURNS, Math.min(MOST_TURNS, Math.floor(turns / WANTED_SEGMENTS)));
  return { recording, measured, plan: planSegments(recording, (each * TURN) / measured.speed) };
}

function durationOf({ channels, sampleRate }: Recording): number {
  return (channels[0]?.samples.length ?? 0) / sampleRate;
}

interface RowTask {
  readonly order: number;
  readonly group: ChannelGroup;
  readonly guards: Guards;
  readonly settings: Settings;
  readonly stream: number;
}

function compareOrder(
  sides: readonly [ComparedSide, ComparedSide],
  { order, group, guards, settings, stream }: RowTask,
): ComparisonRow {
  const [first, second] = [seriesOf(sides[0], order, group), seriesOf(sides[1], order, group)];
  // Each row its own stream: what one row draws does not hang on which others are asked for.
  const random = createRandom(settings.seed + 7919 * stream + 104729 * Math.round(64 * order));
  const change = bootstrapChange(first, second, { random, ...settings });
  const seen = { before: first.seen, after: second.seen };
  const floorRatio = Math.sqrt(second.density / first.density);
  const withheld = guards.withhold({ order, group, seen, interval: change.interval, floorRatio });
  const verdict = withheld === undefined ? verdictOf(change.interval) : 'no difference shown';
  const speed = (sides[0].measured.speed + sides[1].measured.speed) / 2;
  const row = {
    order,
    frequency: (order * speed) / TURN,
    channel: group.label,
    unit: group.unit,
    before: { ...change.before, seen: seen.before },
    after: { ...change.after, seen: seen.after },
    ratio: change.ratio,
    interval: change.interval,
    decibels: 20 * Math.log10(change.ratio),
    decibelsError: change.decibelsError,
    verdict,
    ...(withheld === undefined ? {} : { withheld }),
  };
  return { ...row, sentence: describeChange(row) };
}

function verdictOf([low, high]: readonly [number, number]): ComparisonRow['verdict'] {
  if (high < 1) return 'lower';
  return low > 1 ? 'higher' : 'no difference shown';
}

/** Powers of an order, the channels of the group added, with the noise that is in them. */
function seriesOf({ recording, measured, plan }: ComparedSide, order: number, { names }: ChannelGroup) {
  const place = measured.orders.find((one) => one.order === order);
  const frequency = (place?.apparentFrequency ?? 0) / recording.sampleRate;
  const chosen = recording.channels.filter(({ name }) => names.includes(name));
  const powers = new Float64Array(plan.starts.length);
  for (const { samples } of chosen) {
    segmentPowers(samples, { ...plan, frequency }).forEach((power, i) => {
      powers[i] = (powers[i] ?? 0) + power;
    });
  }
  const shown = place?.channels.filter(({ channel }) => names.includes(channel)) ?? [];
  const density = shown.reduce((sum, { floor }) => sum + floor ** 2 / 2, 0) / binWidth(measured);
  return {
    powers,
    noise: density * (recording.sampleRate / plan.length),
    density,
    seen: shown.some(({ seen }) => seen),
  };
}

/** Hz between two lines of the spectrum in which the floor was read; two of them part two sines. */
function binWidth({ resolution }: OrderAmplitudes): number {
  return resolution / 2;
}
