import { type Scan } from './scan-samples.js';
import { type Channel, type Stuck } from './types.js';

interface Scanned {
  /** What a pass over each channel showed. */
  readonly scans: readonly Scan[];
  /** Samples that a standstill must last to be told. */
  readonly shortest: number;
}

const MOST_RUNS = 50;

/**
 * Finds runs in which a channel stands still while it moves elsewhere, and channels that never move.
 *
 * @param channels - channels of one recording
 * @param scanned - passes over them, and the length that counts
 * @remarks Where a channel's step is coarse it stands still by itself; a run then counts only from eight times the
 *   length that its own steps make likely.
 */
export function findStuck(channels: readonly Channel[], { scans, shortest }: Scanned): Stuck[] {
  return channels.flatMap(({ name, samples }, i) => {
    const { repeats, longestRun } = scans[i] ?? { repeats: 0, longestRun: 0 };
    const share = repeats / Math.max(samples.length - 1, 1);
    if (share === 1) return [{ channel: name, start: 0, count: samples.length }];
    const least = Math.max(shortest, 8 / (1 - share));
    return longestRun < least ? [] : standingRuns(samples, least).map((run) => ({ channel: name, ...run }));
  });
}

/**
 * Counts the rows that repeat the row before in every channel.
 *
 * @param channels - channels of one recording; of a single one nothing can be said
 */
export function countHeldRows(channels: readonly Channel[]): number {
  const [first, ...rest] = channels.map(({ samples }) => samples);
  if (!first || rest.length === 0) return 0;
  let held = 0;
  for (let i = 1; i < first.length; i++) {
    if (first[i] === first[i - 1] && rest.every((samples) => samples[i] === samples[i - 1])) held++;
  }
  return held;
}

function standingRuns(samples: Float64Array, least: number): { start: number; count: number }[] {
  const runs: { start: number; count: number }[] = [];
  let start = 0;
  for (let i = 1; i <= samples.length && runs.length < MOST_RUNS; i++) {
    if (i < samples.length && samples[i] === samples[start]) continue;
    if (i - start >= least) runs.push({ start, count: i - start });
    start = i;
  }
  return runs;
}
