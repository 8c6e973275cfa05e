import { figureText } from './figure-text.js';
import { seriesAt } from './map-geometry.js';
import type { MapGrid, MapOrder } from './map-geometry.js';

/** What the reader points at in a map. */
export interface MapPointing {
  /** s */
  readonly time: number;
  /** Hz */
  readonly frequency: number;
  readonly unit: string;
  readonly orders: readonly MapOrder[];
}

/**
 * Reads a map at a place: time, frequency, amplitude, multiple of shaft speed, and the orders that pass there.
 *
 * @param grid - the map
 * @param pointing - where, and what is marked
 * @returns one line of text
 */
export function mapReadout(grid: MapGrid, { time, frequency, unit, orders }: MapPointing): string {
  const column = within(Math.round((time - grid.start) / grid.timeStep), grid.columns);
  const line = within(Math.round(frequency / grid.step), grid.lines);
  const amplitude = grid.amplitude[column * grid.lines + line] ?? 0;
  const parts = [
    `${figureText(time)} s`,
    `${figureText(frequency)} Hz`,
    `${figureText(amplitude, 2)} ${unit}`,
  ];
  const [first] = orders;
  if (first) {
    const shaft = seriesAt({ time: first.time, value: first.frequency }, time) / first.order;
    parts.push(`${(frequency / shaft).toFixed(2)} × shaft speed (${figureText(60 * shaft)} rpm)`);
  }
  const near = orders.filter(
    (order) =>
      Math.abs(seriesAt({ time: order.time, value: order.apparent }, time) - frequency) <= 1.5 * grid.step,
  );
  if (near.length > 0) parts.push(near.map(({ order }) => `order ${order}`).join(', '));
  return parts.join(' · ');
}

function within(index: number, count: number): number {
  return Math.max(0, Math.min(count - 1, index));
}
