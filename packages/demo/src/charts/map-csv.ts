import type { MapGrid } from './map-geometry.js';
import type { SpectrumView } from './spectrum-view.js';

/** More lines than a spreadsheet is comfortable with. */
const MOST_LINES = 500;

/**
 * The part of a map that is shown, as comma-separated text: a row a time, a column a frequency.
 *
 * @param grid - the map
 * @param view - the stretch of frequency shown; where it holds too many lines, the highest of neighbours stands for them
 */
export function mapCsv(grid: MapGrid, view: SpectrumView): string {
  const first = Math.max(0, Math.ceil(view.from / grid.step));
  const last = Math.min(grid.lines - 1, Math.floor(view.to / grid.step));
  const pooled = Math.max(1, Math.ceil((last - first + 1) / MOST_LINES));
  const starts = Array.from(
    { length: Math.ceil((last - first + 1) / pooled) },
    (_, index) => first + index * pooled,
  );
  const head = [
    'time (s)',
    ...starts.map((line) => `${Number(((line + (pooled - 1) / 2) * grid.step).toPrecision(6))} Hz`),
  ];
  const rows = Array.from({ length: grid.columns }, (_, column) => {
    const time = grid.start + column * grid.timeStep;
    const values = starts.map((line) => {
      let most = 0;
      for (let at = line; at < line + pooled && at < grid.lines; at++)
        most = Math.max(most, grid.amplitude[column * grid.lines + at] ?? 0);
      return Number(most.toPrecision(4));
    });
    return [Number(time.toFixed(4)), ...values].join(',');
  });
  return [head.join(','), ...rows, ''].join('\r\n');
}
