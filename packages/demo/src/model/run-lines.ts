import type { OrderTrack } from '@sternline/core';

/** An order's amplitude against shaft speed. */
export interface RunLine {
  readonly order: number;
  readonly unit: string;
  readonly channel: string;
  /** rad/s, ascending. */
  readonly speed: readonly number[];
  readonly amplitude: readonly number[];
}

/** Steps of speed that an eye can part. */
const BINS = 90;

/**
 * The amplitude of each order against speed, whether the shaft ran up, coasted down, or both.
 *
 * @param track - orders through the run
 * @returns a line an order, the mean of what was measured about each speed; times at which an order is hidden are left out
 */
export function runLines({ speed, orders }: OrderTrack): RunLine[] {
  const lowest = speed.reduce((least, value) => Math.min(least, value), Infinity);
  const highest = speed.reduce((most, value) => Math.max(most, value), 0);
  const width = Math.max((highest - lowest) / BINS, 1e-9);
  return orders.map(({ order, unit, channel, amplitude, hidden }) => {
    const bins = new Map<number, { sum: number; speeds: number; count: number }>();
    speed.forEach((value, index) => {
      if (hidden[index] === 1) return;
      const place = Math.floor((value - lowest) / width);
      const bin = bins.get(place) ?? { sum: 0, speeds: 0, count: 0 };
      bins.set(place, {
        sum: bin.sum + (amplitude[index] ?? 0),
        speeds: bin.speeds + value,
        count: bin.count + 1,
      });
    });
    const means = [...bins.entries()].sort(([a], [b]) => a - b).map(([, bin]) => bin);
    return {
      ...{ order, unit, channel },
      speed: means.map(({ speeds, count }) => speeds / count),
      amplitude: means.map(({ sum, count }) => sum / count),
    };
  });
}
