import type { AvoidBand } from './types.js';

/**
 * How far a speed is from the nearest edge of a band, as a share of the speed: positive outside every band, negative
 * inside one, Infinity where there is no band.
 */
export function bandClearance(speed: number, bands: readonly Pick<AvoidBand, 'from' | 'to'>[]): number {
  return Math.min(
    ...bands.map(({ from, to }) =>
      speed < from ? from / speed - 1 : speed > to ? 1 - to / speed : -insideBy(speed, { from, to }),
    ),
  );
}

function insideBy(speed: number, { from, to }: { readonly from: number; readonly to: number }): number {
  return Math.min(speed - from, to - speed) / speed;
}
