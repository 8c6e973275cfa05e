import type { MapGrid } from './map-geometry.js';
import type { SpectrumView } from './spectrum-view.js';

/** How dark each place of a map is. */
export interface MapShades {
  readonly columns: number;
  readonly rows: number;
  /** 0 (paper) … 255 (ink), row by row from the highest frequency down. */
  readonly shade: Uint8Array;
}

/** dB from the darkest ink down to bare paper, at most. */
const REACH = 50;

/**
 * Turns a map into shades of ink, on a scale of decibels: half the places bare, the strongest in full ink.
 *
 * @param grid - amplitude over time and frequency
 * @param frame - the stretch of frequency shown, and how many rows it has room for
 * @returns a shade for each column of the grid and each row
 */
export function mapShades(
  grid: MapGrid,
  frame: { readonly view: SpectrumView; readonly rows: number },
): MapShades {
  const { columns } = grid;
  const shown = frame.view.to - frame.view.from;
  const rows = Math.max(1, Math.min(frame.rows, Math.ceil(shown / grid.step)));
  const decibels = new Float32Array(rows * columns);
  for (let row = 0; row < rows; row++) {
    const top = frame.view.to - (row * shown) / rows;
    const range = linesBetween(grid, { from: top - shown / rows, to: top });
    for (let column = 0; column < columns; column++) {
      decibels[row * columns + column] = 20 * Math.log10(highest(grid, { column, ...range }));
    }
  }
  return { columns, rows, shade: inked(decibels) };
}

function linesBetween({ step, lines }: MapGrid, view: SpectrumView): { first: number; last: number } {
  const first = Math.min(lines - 1, Math.max(0, Math.round(view.from / step)));
  return { first, last: Math.min(lines - 1, Math.max(first, Math.round(view.to / step) - 1)) };
}

function highest(
  { amplitude, lines }: MapGrid,
  place: { readonly column: number; readonly first: number; readonly last: number },
): number {
  let most = 0;
  for (let line = place.first; line <= place.last; line++) {
    const value = amplitude[place.column * lines + line] ?? 0;
    if (value > most) most = value;
  }
  return most;
}

function inked(decibels: Float32Array): Uint8Array {
  const sorted = decibels.filter((value) => Number.isFinite(value)).sort();
  const high = sorted[Math.floor(0.999 * (sorted.length - 1))] ?? 0;
  const low = Math.max(sorted[Math.floor(sorted.length / 2)] ?? high - REACH, high - REACH);
  const span = Math.max(high - low, 1);
  return Uint8Array.from(decibels, (value) =>
    Math.round(255 * Math.min(1, Math.max(0, (value - low) / span))),
  );
}
