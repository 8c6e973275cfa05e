import { type MissingRows } from './find-gaps.js';
import { type Gap } from './types.js';

/** A run of bad cells longer than this is a gap. */
export const LONGEST_PATCH = 2;

/**
 * Puts rows at their places in the count that includes the missing ones; missing ones are NaN.
 *
 * @param values - one for each row
 * @param missing - rows missing before rows
 */
export function spreadRows(values: Float64Array, missing: readonly MissingRows[]): Float64Array {
  if (missing.length === 0) return values;
  const total = missing.reduce((sum, { count }) => sum + count, values.length);
  const spread = new Float64Array(total).fill(NaN);
  let from = 0;
  let shift = 0;
  for (const { before, count } of [...missing, { before: values.length, count: 0 }]) {
    spread.set(values.subarray(from, before), from + shift);
    from = before;
    shift += count;
  }
  return spread;
}

/**
 * Replaces NaN by a straight line between the neighbours, in place, on samples that this room owns.
 *
 * @returns the runs that were filled
 */
export function fillStraight(samples: Float64Array): Gap[] {
  const runs: Gap[] = [];
  for (let i = 0; i < samples.length; i++) {
    if (!Number.isNaN(samples[i])) continue;
    const start = i;
    while (i < samples.length && Number.isNaN(samples[i])) i++;
    const count = i - start;
    runs.push({ start, count });
    const right = samples[i] ?? samples[start - 1] ?? 0;
    const left = samples[start - 1] ?? right;
    for (let k = 0; k < count; k++) samples[start + k] = left + ((right - left) * (k + 1)) / (count + 1);
  }
  return runs;
}

/** Joins runs that touch or overlap, in order. */
export function joinRuns(runs: readonly Gap[]): Gap[] {
  const joined: Gap[] = [];
  for (const run of runs.toSorted((a, b) => a.start - b.start)) {
    const last = joined.at(-1);
    if (last && run.start <= last.start + last.count) {
      joined[joined.length - 1] = {
        start: last.start,
        count: Math.max(last.count, run.start + run.count - last.start),
      };
    } else joined.push(run);
  }
  return joined;
}
