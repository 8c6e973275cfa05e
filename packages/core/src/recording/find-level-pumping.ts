import { quantile } from '../numerics/quantile.js';
import { type Channel, type LevelPumping } from './types.js';

/** s, of one level. */
const BLOCK = 0.02;
/** dB above the level before, by which an event is loud. */
const LOUD = 9;
/** dB, below which a dip is none. */
const LEAST_DIP = 3;
/** dB for a block of silence: below the last bit of 24. */
const SILENCE = -160;
/** Blocks in each stretch: before the event, just after it, and once the gain has come back. */
const BEFORE = 25;
const SETTLE = 4;
const AFTER = 10;
const LATER = { from: 50, to: 200 };
/** Blocks after an event in which the lowest level is looked for. */
const SEARCHED = 35;

/**
 * Finds automatic gain: after a loud event the steady sound around it stands lower than before, in low and high
 * frequencies alike, and swells back slowly.
 *
 * @param channels - sound
 * @param sampleRate - Hz
 * @returns what the channel shows that shows it most; undefined where none does
 * @remarks At least two events must show it and at least two in three of those that could be looked at, so a recording
 *   without loud events tells nothing. Echo leaves the level higher after an event, never lower; a motor that slows
 *   after an event changes its high and low frequencies by different amounts and does not count.
 */
export function findLevelPumping(channels: readonly Channel[], sampleRate: number): LevelPumping | undefined {
  const found = channels.flatMap(({ name, samples }) => pumpingOf(name, samples, sampleRate) ?? []);
  return found.toSorted((a, b) => b.pumped - a.pumped)[0];
}

function pumpingOf(channel: string, samples: Float64Array, sampleRate: number): LevelPumping | undefined {
  const length = Math.max(8, Math.round(BLOCK * sampleRate));
  const levels = levelsOf(samples, length);
  const looked = loudEvents(levels).flatMap((event) => dipAfter(levels, event) ?? []);
  const dips = looked.filter(({ dip }) => dip > 0);
  if (dips.length < 2 || dips.length < (2 / 3) * looked.length) return undefined;
  const median = (values: readonly number[]): number => quantile(values, 0.5);
  return {
    channel,
    events: looked.length,
    pumped: dips.length,
    dip: median(dips.map(({ dip }) => dip)),
    recovery: median(dips.map(({ recovery }) => (recovery * length) / sampleRate)),
  };
}

interface Levels {
  /** dB of each block. */
  readonly whole: Float64Array;
  /** dB of each block's largest sample: a gain that falls at once leaves little else of a knock. */
  readonly peak: Float64Array;
  /** dB of each block's second differences, which weigh high frequencies. */
  readonly high: Float64Array;
}

function levelsOf(samples: Float64Array, length: number): Levels {
  const blocks = Math.floor(samples.length / length);
  const whole = new Float64Array(blocks);
  const high = new Float64Array(blocks);
  const peak = new Float64Array(blocks);
  for (let k = 0; k < blocks; k++) {
    let sum = 0;
    let bends = 0;
    let largest = 0;
    let a = samples[k * length] ?? 0;
    let b = samples[k * length + 1] ?? 0;
    for (let i = k * length + 2; i < (k + 1) * length; i++) {
      const c = samples[i] ?? 0;
      const square = c * c;
      sum += square;
      if (square > largest) largest = square;
      bends += (c - 2 * b + a) ** 2;
      a = b;
      b = c;
    }
    whole[k] = decibels(sum / length);
    high[k] = decibels(bends / length);
    peak[k] = decibels(largest);
  }
  return { whole, high, peak };
}

function decibels(power: number): number {
  return Math.max(SILENCE, 10 * Math.log10(power));
}

/** Blocks in which an event begins, and the first after it. */
interface Event {
  readonly start: number;
  readonly end: number;
  /** First block of the next event. */
  readonly next: number;
}

function loudEvents({ whole, peak }: Levels): Event[] {
  const events: { start: number; end: number }[] = [];
  const isLoud = (k: number): boolean => above(whole, k) > LOUD || above(peak, k) > LOUD;
  for (let k = BEFORE; k < whole.length; k++) {
    const base = before(whole, k);
    if (base <= SILENCE || !isLoud(k)) continue;
    let end = k + 1;
    // Over once it has stayed near or below the level before for five blocks.
    while (end < whole.length && whole.subarray(end, end + 5).some((value) => value > base + 3)) end++;
    events.push({ start: k, end });
    k = end + SETTLE;
  }
  return events.map((event, i) => ({ ...event, next: events[i + 1]?.start ?? whole.length }));
}

/** dB at the median of the blocks before. */
function before(level: Float64Array, k: number): number {
  return quantile(level.subarray(k - BEFORE, k), 0.5);
}

function above(level: Float64Array, k: number): number {
  // Most blocks are below any of those just before, and need no median.
  return (level[k] ?? 0) < (level[k - 1] ?? 0) + 2 && (level[k] ?? 0) < (level[k - 2] ?? 0) + 2
    ? 0
    : (level[k] ?? 0) - before(level, k);
}

interface Dip {
  /** dB; 0 where there is none. */
  readonly dip: number;
  /** Blocks. */
  readonly recovery: number;
}

/** Undefined where the next event comes too soon to see. */
function dipAfter({ whole, high }: Levels, { start, end, next }: Event): Dip | undefined {
  const last = Math.min(end + LATER.to, next - 2);
  if (last - end < LATER.from) return undefined;
  const middle = (level: Float64Array, from: number, to: number): number =>
    quantile(level.subarray(from, to), 0.5);
  const lowest = lowestAfter(whole, { from: end + SETTLE, to: Math.min(end + SEARCHED, last - AFTER) });
  const depth = (level: Float64Array): number =>
    Math.min(before(level, start - 1), middle(level, last - AFTER, last)) -
    middle(level, lowest, lowest + AFTER);
  const dip = depth(whole);
  const steady = whole.subarray(start - BEFORE, start - 1);
  const scatter = (quantile(steady, 0.84) - quantile(steady, 0.16)) / 2;
  const alike = Math.abs(depth(high) - dip) < Math.max(1.5, 0.3 * dip);
  if (dip < Math.max(LEAST_DIP, 2.5 * scatter) || !alike) return { dip: 0, recovery: 0 };
  const target = middle(whole, lowest, lowest + AFTER) + 0.63 * dip;
  let k = lowest + AFTER / 2;
  while (k < last && middle(whole, k, k + 5) < target) k++;
  // What drops and comes back at once is a pause in the sound, not a gain.
  return k - lowest < AFTER ? { dip: 0, recovery: 0 } : { dip, recovery: k - lowest };
}

/** The gain may be at its lowest only when the event is over, which the level does not tell where it was held down. */
function lowestAfter(level: Float64Array, { from, to }: { from: number; to: number }): number {
  let best = from;
  let least = Infinity;
  for (let k = from; k <= to; k++) {
    const value = quantile(level.subarray(k, k + AFTER), 0.5);
    if (value < least) [best, least] = [k, value];
  }
  return best;
}
