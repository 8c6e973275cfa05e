import { checkPositive } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import { alignByLevel } from './align-by-level.js';
import { alignByMarks } from './align-by-marks.js';
import { AlignmentError } from './alignment-error.js';
import { findMarks } from './find-marks.js';
import { type AlignOptions, type Alignment, type Recording } from './types.js';

/**
 * Sets two recordings of one trial, as of sound and motion, on one clock: by taps that both heard, else by the course of
 * their levels.
 *
 * @param pair - two recordings, each on a clock that begins at its first sample; of one kind or two, at any rates
 * @param options - how far apart the clocks may stand, s
 * @returns the offset in s that brings the second onto the clock of the first, its standard error, and the drift
 * @throws RangeError where the pair is no pair of recordings, or `longestOffset` is not greater than 0
 * @throws AlignmentError where nothing in them answers to one another, or several offsets do as well
 * @remarks Taps at uneven pauses tell most: two in common are needed, or one that is the only one in both. Clocks of
 *   phones part by up to 100 parts in a million; the drift is told where at least three marks span ten seconds.
 *   `confidence` is the share by which the best offset surpasses the next; it is no probability. Refused below 0.2.
 * @example
 * const knock = (times, length) => Float64Array.from({ length }, (_, i) =>
 *   0.01 * Math.sin(i * i) + times.reduce((sum, t) => sum + (i >= 200 * t ? Math.exp(200 * t - i) : 0), 0));
 * const made = (samples) => readDelimited(['x (m/s²)', ...samples].join('\n'), { sampleRate: 200, columns: { x: 0 } });
 * const first = made(knock([2, 2.7, 4.1], 2000));
 * const second = made(knock([0.5, 1.2, 2.6], 1600));
 * const { offset, marks } = alignRecordings([first, second]);
 * offset // → 1.500
 * marks // → 3
 * @see Charles Knapp and G. Clifford Carter, "The generalized correlation method for estimation of time delay", IEEE
 *   Trans. ASSP 24(4), 1976, for the error of a correlation peak
 */
export function alignRecordings(
  pair: readonly [Recording, Recording],
  { longestOffset = Infinity }: AlignOptions = {},
): Alignment {
  checkPair(pair, longestOffset);
  const [first, second] = pair;
  const marks = alignByMarks([findMarks(first), findMarks(second)], longestOffset);
  const level = (marks?.marks ?? 0) >= SURE_MARKS ? undefined : alignByLevel(pair, longestOffset);
  const best = marks && agrees(marks, level) ? marks : level;
  if (best && best.confidence >= LEAST_CONFIDENCE) return best;
  if (best ?? marks)
    throw new AlignmentError('ambiguous', 'several offsets bring the recordings to agree equally well.');
  throw new AlignmentError('unlike', 'no mark and no change of level is in both recordings.');
}

function checkPair(pair: readonly Recording[], longestOffset: number): void {
  const channels = Array.from(pair, (one) => one.channels.length);
  if (channels.length !== 2 || channels.includes(0))
    throw refusal('alignRecordings: pair', 'two recordings with at least one channel each', pair);
  if (longestOffset !== Infinity) checkPositive('alignRecordings: longestOffset', longestOffset);
}

const LEAST_CONFIDENCE = 0.2;
/** As many marks need no second witness. */
const SURE_MARKS = 3;
/** s */
const NEAR = 0.15;

/** Few marks may fall together by chance; a clear course of the level then overrules them. */
function agrees(marks: Alignment, level: Alignment | undefined): boolean {
  if (marks.confidence < LEAST_CONFIDENCE) return false;
  return !level || level.confidence < 1.5 * LEAST_CONFIDENCE || Math.abs(level.offset - marks.offset) < NEAR;
}
