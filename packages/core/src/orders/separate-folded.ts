import { checkPositive } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import type { Recording } from '../recording/types.js';
import { peaksOf } from '../spectrum/peaks-of.js';
import { recordingSpectra } from '../spectrum/recording-spectra.js';
import type { Peak } from '../spectrum/types.js';
import { foldedFrequency } from './folded-frequency.js';
import { trackOrders } from './track-orders.js';
import type { RunAtSpeed, SeparatedLine, SeparateInput, SpeedAtTime } from './types.js';

const ORDERS: readonly number[] = [0.5, 1, 1.5, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12];
/** Share by which a stated speed may be wrong. */
const SPEED_ERROR = 0.003;
const FALSE_ALARM_RATE = 0.005;

/**
 * Tells a folded order from a true one by how its line moves when the speed does: an order o beyond half the rate moves by
 * ± o Δf, another order on the same line by another amount, a frequency of the hull not at all.
 *
 * f_a(o, ω) = |o ω / 2π − fs · round(o ω / 2π fs)| at each speed
 *
 * @param input - `recordings` at two steady speeds or more, the first of which is explained; or with a speed that moves
 * @returns each line of the first recording (or each order of it, where its speed moves), the strongest first, with what could explain it and what the others leave of that
 * @throws RangeError for fewer than two recordings unless one has a moving speed, or a speed or order not greater than 0
 * @remarks Speeds must hold within 0.3 %. An order that does not show at the other speed is struck out, so a line that dies away
 *   there (a resonance left behind) can be left without explanation. Choose speeds 5 to 15 % apart.
 * @example
 * ```ts
 * let state = 1;
 * const noise = () => (state = (16807 * state) % 2147483647) / 2147483647 - 0.5;
 * const run = (shaft) => ({ speed: 2 * Math.PI * shaft, recording: { name: 'run', sampleRate: 100, sampling: { kind: 'motion', gaps: [] },
 *   channels: [{ name: 'x', unit: 'm/s²', samples: Float64Array.from({ length: 3000 }, (_, n) =>
 *     Math.sin(2 * Math.PI * 2 * shaft * n / 100) + 0.3 * noise()) }] } });
 * const [line] = separateFolded({ recordings: [run(66.7), run(61)] });
 * line.frequency // → 33.4 Hz
 * line.couldBe.includes(1) && line.couldBe.includes(2) // → true
 * line.is // → 2
 * ```
 */
export function separateFolded({ recordings, orders = ORDERS }: SeparateInput): SeparatedLine[] {
  check(recordings, orders);
  const [first, ...others] = recordings;
  if (first === undefined) return [];
  const bears = others.map((run) => supportOf(run, orders));
  const places = explanations(orders, first);
  if (typeof first.speed !== 'number')
    return sweptLines(first.recording, { speed: first.speed, orders, bears });
  return linesOf(first.recording).map(({ peak, channel, resolution }): SeparatedLine => {
    const couldBe = places
      .filter(({ apparent, error }) => Math.abs(apparent - peak.frequency) < resolution + error)
      .map(({ order }) => order);
    const candidates: (number | 'fixed')[] = [...couldBe, 'fixed'];
    const remains = candidates.filter((candidate) => bears.every((test) => test(candidate, peak.frequency)));
    const is = remains.length === 1 ? remains[0] : undefined;
    const { sampleRate } = first.recording;
    return {
      frequency: peak.frequency,
      amplitude: peak.amplitude,
      channel,
      is,
      folded: typeof is === 'number' && is * shaftOf(first) > sampleRate / 2,
      couldBe: candidates,
      remains,
    };
  });
}

function check(recordings: readonly RunAtSpeed[], orders: readonly number[]): void {
  orders.forEach((order, i) => {
    checkPositive(`separateFolded: orders[${i}]`, order);
  });
  recordings.forEach(({ speed }, i) => {
    if (typeof speed === 'number') checkPositive(`separateFolded: recordings[${i}].speed`, speed);
  });
  const swept = recordings.some(({ speed }) => typeof speed !== 'number');
  if (recordings.length < 2 && !swept)
    throw refusal(
      'separateFolded: recordings',
      'two at different speeds or one with a speed that moves',
      recordings,
    );
}

/** Hz; in the middle of a run whose speed moves. */
function shaftOf({ speed }: RunAtSpeed): number {
  const value = typeof speed === 'number' ? speed : (speed[speed.length >> 1]?.speed ?? NaN);
  return value / (2 * Math.PI);
}

interface SeenLine {
  readonly peak: Peak;
  readonly channel: string;
  readonly resolution: number;
}

/** Lines of any channel, each frequency once, strongest first. */
function linesOf(recording: Recording): SeenLine[] {
  const all = recordingSpectra(recording, { padding: 1, caller: 'separateFolded' }).flatMap((spectrum, i) =>
    peaksOf(spectrum, { falseAlarmRate: FALSE_ALARM_RATE }).map((peak) => ({
      peak,
      channel: recording.channels[i]?.name ?? '',
      resolution: spectrum.resolution,
    })),
  );
  const kept: SeenLine[] = [];
  for (const line of all.sort((a, b) => b.peak.amplitude - a.peak.amplitude)) {
    if (kept.every(({ peak }) => Math.abs(peak.frequency - line.peak.frequency) > line.resolution))
      kept.push(line);
  }
  return kept;
}

function explanations(
  orders: readonly number[],
  run: RunAtSpeed,
): { order: number; apparent: number; error: number }[] {
  return orders.map((order) => {
    const actual = order * shaftOf(run);
    const apparent = foldedFrequency(actual, run.recording.sampleRate);
    return { order, apparent, error: SPEED_ERROR * actual };
  });
}

/** Whether a run bears out that the line at `frequency` (Hz) of the first recording is this. */
type Support = (candidate: number | 'fixed', frequency: number) => boolean;

function supportOf(run: RunAtSpeed, orders: readonly number[]): Support {
  return typeof run.speed === 'number'
    ? steadySupport(run, orders)
    : sweptSupport(run.recording, run.speed, orders);
}

function steadySupport(run: RunAtSpeed, orders: readonly number[]): Support {
  const seen = linesOf(run.recording);
  const places = new Map(explanations(orders, run).map((place) => [place.order, place]));
  return (candidate, frequency) => {
    const place = candidate === 'fixed' ? { apparent: frequency, error: 0 } : places.get(candidate);
    if (place === undefined) return false;
    return seen.some(
      ({ peak, resolution }) => Math.abs(peak.frequency - place.apparent) < resolution + place.error,
    );
  };
}

/** Through a sweep an order is there if it stands above its noise most of the time that it can be seen. */
function sweptOrders(recording: Recording, speed: readonly SpeedAtTime[], orders: readonly number[]) {
  const track = trackOrders(recording, { orders: [...new Set(orders)], speed });
  return track.orders.filter(({ amplitude, amplitudeError, hidden }) => {
    const open = [...amplitude.keys()].filter((i) => hidden[i] === 0);
    const above = open.filter((i) => (amplitude[i] ?? 0) > 3 * (amplitudeError[i] ?? 0));
    return open.length > 0 && above.length > 0.6 * open.length;
  });
}

function sweptSupport(
  recording: Recording,
  speed: readonly SpeedAtTime[],
  orders: readonly number[],
): Support {
  const there = new Set(sweptOrders(recording, speed, orders).map(({ order }) => order));
  return (candidate) => candidate !== 'fixed' && there.has(candidate);
}

/** Orders that a sweep shows, where they stand at its middle speed: their slopes tell them apart without more. */
function sweptLines(
  recording: Recording,
  {
    speed,
    orders,
    bears,
  }: { speed: readonly SpeedAtTime[]; orders: readonly number[]; bears: readonly Support[] },
): SeparatedLine[] {
  const { sampleRate } = recording;
  const shaft = shaftOf({ recording, speed });
  return sweptOrders(recording, speed, orders)
    .map(({ order, amplitude, channel }): SeparatedLine => {
      const frequency = foldedFrequency(order * shaft, sampleRate);
      const holds = bears.every((test) => test(order, frequency));
      return {
        frequency,
        amplitude: amplitude.reduce((sum, value) => sum + value, 0) / Math.max(1, amplitude.length),
        channel,
        is: holds ? order : undefined,
        folded: order * shaft > sampleRate / 2,
        couldBe: [order],
        remains: holds ? [order] : [],
      };
    })
    .sort((a, b) => b.amplitude - a.amplitude);
}
