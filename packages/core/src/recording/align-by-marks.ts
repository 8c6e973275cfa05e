import { fitLine } from './fit-line.js';
import { type Marks } from './find-marks.js';
import { type Alignment } from './types.js';

/** Share by which two phones' clocks part at most; common crystals keep within 50 parts in a million each. */
const MOST_DRIFT = 1e-4;
/** s, between the first and last common mark, from which on drift can be told. */
const DRIFT_SPAN = 10;

/** By how much a tap must surpass the level before it where it is the only one. */
const CLEAR = 4;

interface Pairing {
  readonly offset: number;
  /** Times of marks in both. */
  readonly pairs: readonly (readonly [number, number])[];
}

/**
 * Finds the offset at which most marks of two recordings fall together.
 *
 * @param marks - of both recordings
 * @param longestOffset - s
 * @returns undefined where none do
 */
export function alignByMarks(
  [first, second]: readonly [Marks, Marks],
  longestOffset: number,
): Alignment | undefined {
  const error = Math.hypot(first.error, second.error);
  const tolerance = 4 * error + 0.002;
  const offsets = Array.from(first.times).flatMap((a) => Array.from(second.times, (b) => a - b));
  const pairings = offsets
    .filter((offset) => Math.abs(offset) <= longestOffset)
    .map((offset) => pairUp([first.times, second.times], { offset, tolerance }))
    .toSorted((a, b) => b.pairs.length - a.pairs.length);
  const [best] = pairings;
  if (!best) return undefined;
  const apart = 3 * tolerance + MOST_DRIFT * (first.times.at(-1) ?? 0);
  const next = pairings.find(({ offset }) => Math.abs(offset - best.offset) > apart);
  const count = best.pairs.length;
  const lone = first.times.length === 1 && second.times.length === 1;
  const clear = lone && Math.min(first.strength, second.strength) > CLEAR;
  if (count < 2 && !clear) return undefined;
  const confidence = 1 - ((next?.pairs.length ?? 0) + 0.5) / (count + 0.5);
  return { ...fitPairs(best, error), from: 'marks', marks: count, confidence: Math.max(0, confidence) };
}

/** Each mark of the second with the nearest of the first, where they fall together; drift widens what counts as together. */
function pairUp(
  [a, b]: readonly [Float64Array, Float64Array],
  { offset, tolerance }: { offset: number; tolerance: number },
): Pairing {
  const origin = b.find((time) => a.some((other) => other - time === offset)) ?? b[0] ?? 0;
  const pairs: (readonly [number, number])[] = [];
  let i = 0;
  for (const time of b) {
    const wanted = time + offset;
    while (i + 1 < a.length && Math.abs((a[i + 1] ?? 0) - wanted) <= Math.abs((a[i] ?? 0) - wanted)) i++;
    const room = tolerance + MOST_DRIFT * Math.abs(time - origin);
    const used = pairs.at(-1)?.[0] === a[i];
    if (Math.abs((a[i] ?? Infinity) - wanted) <= room && !used) pairs.push([a[i] ?? 0, time]);
  }
  return { offset, pairs };
}

function fitPairs(
  { pairs }: Pairing,
  error: number,
): Pick<Alignment, 'offset' | 'offsetError' | 'drift' | 'driftError'> {
  const seconds = pairs.map(([, b]) => b);
  const differences = pairs.map(([a, b]) => a - b);
  const span = (seconds.at(-1) ?? 0) - (seconds[0] ?? 0);
  const mean = differences.reduce((sum, value) => sum + value, 0) / pairs.length;
  // Taps show late by what they have in common, so more of them do not narrow the offset.
  if (pairs.length < 3 || span < DRIFT_SPAN)
    return {
      offset: mean,
      offsetError: error + 0.5 * MOST_DRIFT * span,
      drift: 0,
      driftError: NaN,
    };
  const { slope, intercept } = fitLine(seconds, differences);
  const middle = seconds.reduce((sum, value) => sum + value, 0) / seconds.length;
  const spread = seconds.reduce((sum, value) => sum + (value - middle) ** 2, 0);
  return {
    offset: intercept,
    // Of the line's value at the second clock's zero.
    offsetError: error * Math.sqrt(1 + middle ** 2 / spread),
    drift: slope,
    driftError: error / Math.sqrt(spread),
  };
}
