import { quantile } from '../numerics/quantile.js';
import { type Recording } from './types.js';

/** Sharp events of a recording, and how well their times are known. */
export interface Marks {
  /** s from the first sample, ascending. */
  readonly times: Float64Array;
  /** s, standard error of one. */
  readonly error: number;
  /** By how much the strongest surpasses the level before it. */
  readonly strength: number;
}

/** s, of one level in a recording of sound. */
const BLOCK = 0.001;
/** By how much a mark surpasses the level around it. */
const SHARP = 3;
/** s, in which the level around is taken, and within which a mark's ringing makes no second one. */
const AROUND = 0.4;
const RINGING = 0.15;
const MOST = 40;

/**
 * Finds taps: moments at which the level jumps far above what was before.
 *
 * @param recording - of sound or motion
 * @returns the strongest, at most 40
 */
export function findMarks({ channels, sampleRate }: Recording): Marks {
  const length = Math.max(1, Math.round(BLOCK * sampleRate));
  const rate = sampleRate / length;
  const level = bendLevel(
    channels.map(({ samples }) => samples),
    length,
  );
  const around = Math.max(4, Math.round(AROUND * rate));
  const found: { place: number; strength: number }[] = [];
  for (let k = 1; k < level.length; k++) {
    const value = level[k] ?? 0;
    // Most are below the one before, and need no look around.
    if (value < 1.5 * (level[k - 1] ?? 0)) continue;
    const before = level.subarray(Math.max(0, k - around), k);
    if (before.length < 4) continue;
    const usual = highest(before);
    const peak = highest(level.subarray(k, k + Math.ceil(0.01 * rate) + 1));
    const last = found.at(-1);
    if (last && k - last.place < RINGING * rate) continue;
    if (value > SHARP * quantile(before, 0.9) && value > 1.5 * usual && value > 0.3 * peak)
      found.push({ place: k, strength: peak / Math.max(usual, 1e-300) });
  }
  const strongest = found.toSorted((a, b) => b.strength - a.strength).slice(0, MOST);
  // The jump lies anywhere within its block, and between its sample and the one before.
  const times = Float64Array.from(strongest, ({ place }) => (place + 0.5 - 1 / length) / rate).sort();
  // Half a level's length, since a tap that falls between samples may show in the second only.
  return { times, strength: strongest[0]?.strength ?? 0, error: 0.5 / rate + 0.0005 };
}

/** Mean size of the second differences in blocks: slow motion and hum leave little of it, a tap much. */
function bendLevel(channels: readonly Float64Array[], length: number): Float64Array {
  const samples = channels[0]?.length ?? 0;
  const level = new Float64Array(Math.floor(samples / length));
  for (const values of channels) {
    for (let k = 0; k < level.length; k++) {
      let sum = 0;
      for (let i = Math.max(2, k * length); i < (k + 1) * length; i++)
        sum += Math.abs((values[i] ?? 0) - 2 * (values[i - 1] ?? 0) + (values[i - 2] ?? 0));
      level[k] = (level[k] ?? 0) + sum / length;
    }
  }
  return level;
}

function highest(values: Float64Array): number {
  let most = 0;
  for (const value of values) if (value > most) most = value;
  return most;
}
