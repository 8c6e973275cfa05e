import type { SpectrumMap } from './analysis-types.js';
import type { LevelTable } from './level-words.js';
import { shortFigure } from './short-figure.js';

/** Moments that a listener to a table has patience for. */
const MOMENTS = 20;

/**
 * A map in figures: at some moments, where it stands highest.
 *
 * @param map - the map
 */
export function mapTable(map: SpectrumMap): LevelTable {
  const moments = Math.min(MOMENTS, map.columns);
  return {
    caption: 'The strongest line at each moment',
    columns: ['Time, s', 'Frequency, Hz', `Amplitude, ${map.unit}`],
    rows: Array.from({ length: moments }, (_, moment) => {
      const column = Math.round((moment * (map.columns - 1)) / Math.max(1, moments - 1));
      const amplitudes = map.amplitude.subarray(column * map.lines, (column + 1) * map.lines);
      const line = amplitudes.reduce(
        (best, value, index) => (value > (amplitudes[best] ?? 0) ? index : best),
        0,
      );
      return [
        shortFigure(map.start + column * map.timeStep),
        shortFigure(line * map.step),
        shortFigure(amplitudes[line] ?? 0),
      ];
    }),
  };
}
