import { type Channel, type Clipping } from './types.js';

/**
 * Finds channels whose samples pile up at their extremes.
 *
 * @param channels - channels as recorded, in their units
 * @param limits - sensor limits worth looking at, in the unit: at these fewer samples tell
 * @returns one entry for each side that is clipped
 * @remarks A side counts as clipped where at least 8 samples (3 near a known limit) stand exactly at the extreme and
 *   they are more than five times as many as at the five next values on average: the peak of a sine holds at most
 *   3.5 times as many. Three in a row at a known limit tell by themselves.
 */
export function findClipping(channels: readonly Channel[], limits: readonly number[] = []): Clipping[] {
  return channels.flatMap(({ name, samples }) =>
    [1, -1].flatMap((side) => {
      const { extreme, count, longest } = extremeOf(samples, side);
      const known = limits.some((limit) => Math.abs(extreme / limit - 1) < 0.012);
      if (count < (known ? 3 : 8) || extreme === 0) return [];
      const clipped = (known && longest >= 3) || pilesUp({ samples, side, extreme, count });
      return clipped ? [{ channel: name, count, level: side * extreme }] : [];
    }),
  );
}

function extremeOf(samples: Float64Array, side: number): { extreme: number; count: number; longest: number } {
  let extreme = -Infinity;
  let count = 0;
  let run = 0;
  let longest = 0;
  for (const sample of samples) {
    const value = side * sample;
    if (value < extreme) {
      run = 0;
      continue;
    }
    if (value > extreme) {
      extreme = value;
      count = 0;
      run = 0;
      longest = 0;
    }
    count++;
    run++;
    if (run > longest) longest = run;
  }
  return { extreme, count, longest };
}

interface Pile {
  readonly samples: Float64Array;
  readonly side: number;
  readonly extreme: number;
  readonly count: number;
}

function pilesUp({ samples, side, extreme, count }: Pile): boolean {
  const counts = new Map<number, number>();
  const stride = Math.max(1, Math.floor(samples.length / 200_000));
  for (let i = 0; i < samples.length; i += stride) {
    const value = side * (samples[i] ?? 0);
    if (value < extreme && value > 0.5 * extreme) counts.set(value, (counts.get(value) ?? 0) + 1);
  }
  const next = [...counts.keys()].sort((a, b) => b - a).slice(0, 5);
  if (next.length < 5) return false;
  const mean = next.reduce((sum, value) => sum + (counts.get(value) ?? 0), 0) / next.length;
  return count / stride > 5 * mean;
}
