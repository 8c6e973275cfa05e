import { type Extreme, type Scan } from './scan-samples.js';
import { type Channel, type Clipping } from './types.js';

interface Scanned {
  /** What a pass over each channel showed. */
  readonly scans: readonly Scan[];
  /** Sensor limits worth looking at, in the channels' unit: near these fewer samples tell. */
  readonly limits: readonly number[];
}

/**
 * Finds channels whose samples pile up at their extremes.
 *
 * @param channels - channels as recorded, in their units
 * @param scanned - passes over them, and the limits that sensors have
 * @returns one entry for each side that is clipped
 * @remarks A side counts as clipped where at least 8 samples (3 near a known limit) stand exactly at the extreme and
 *   they are more than five times as many as at the five next values on average: the peak of a sine holds at most
 *   3.5 times as many. Three in a row at a known limit tell by themselves.
 */
export function findClipping(channels: readonly Channel[], { scans, limits }: Scanned): Clipping[] {
  return channels.flatMap(({ name, samples }, i) => {
    const scan = scans[i];
    if (!scan) return [];
    return [scan.highest, scan.lowest]
      .filter((extreme) => isClipped(samples, extreme, limits))
      .map(({ level, count }) => ({ channel: name, count, level }));
  });
}

function isClipped(
  samples: Float64Array,
  { level, count, longest }: Extreme,
  limits: readonly number[],
): boolean {
  const known = limits.some((limit) => Math.abs(Math.abs(level) / limit - 1) < 0.012);
  if (level === 0 || count < (known ? 3 : 8)) return false;
  return (known && longest >= 3) || count > 5 * nextCounts(samples, level);
}

/** How many samples stand at each of the five values next to an extreme, on average. */
function nextCounts(samples: Float64Array, level: number): number {
  const counts = new Map<number, number>();
  const stride = Math.max(1, Math.floor(samples.length / 50_000));
  const side = Math.sign(level);
  for (let i = 0; i < samples.length; i += stride) {
    const value = side * (samples[i] ?? 0);
    if (value < side * level && value > 0.5 * side * level) counts.set(value, (counts.get(value) ?? 0) + 1);
  }
  const next = [...counts.keys()].sort((a, b) => b - a).slice(0, 5);
  if (next.length < 5) return Infinity;
  return (stride * next.reduce((sum, value) => sum + (counts.get(value) ?? 0), 0)) / next.length;
}
