import { type Channel, type Stuck } from './types.js';

/** Rows that repeat, and runs in which a channel stood still. */
export interface Standstill {
  readonly stuck: readonly Stuck[];
  /** Rows that repeat the row before in every channel. */
  readonly heldRows: number;
}

const MOST_RUNS = 50;

/**
 * Finds channels that stand still while they should not.
 *
 * @param channels - channels of one recording
 * @param shortest - samples a standstill must last to be told
 * @remarks Where a channel's step is coarse it stands still by itself; a run then counts only from eight times the
 *   length that its own steps make likely.
 */
export function findStuck(channels: readonly Channel[], shortest: number): Standstill {
  const stuck = channels.flatMap(({ name, samples }) => standingRuns(samples, shortest).map((run) => ({ channel: name, ...run })));
  const [first, ...rest] = channels;
  let heldRows = 0;
  if (first && rest.length > 0) {
    for (let i = 1; i < first.samples.length; i++) {
      if (first.samples[i] === first.samples[i - 1] && rest.every(({ samples }) => samples[i] === samples[i - 1])) heldRows++;
    }
  }
  return { stuck, heldRows };
}

function standingRuns(samples: Float64Array, shortest: number): { start: number; count: number }[] {
  let repeats = 0;
  for (let i = 1; i < samples.length; i++) if (samples[i] === samples[i - 1]) repeats++;
  const share = repeats / Math.max(samples.length - 1, 1);
  if (share === 1) return samples.length > 1 ? [{ start: 0, count: samples.length }] : [];
  const least = Math.max(shortest, 8 / (1 - share));
  const runs: { start: number; count: number }[] = [];
  let start = 0;
  for (let i = 1; i <= samples.length && runs.length < MOST_RUNS; i++) {
    if (i < samples.length && samples[i] === samples[start]) continue;
    if (i - start >= least) runs.push({ start, count: i - start });
    start = i;
  }
  return runs;
}
