/**
 * A figure in plain decimals with a few significant digits, for sentences and tables.
 *
 * @param value - the figure
 * @param digits - significant digits, 3 unless told
 * @returns such as `0.0123`; a dash where there is none
 */
export function shortFigure(value: number, digits = 3): string {
  if (!Number.isFinite(value)) return '–';
  if (value === 0) return '0';
  const decimals = Math.max(0, digits - 1 - Math.floor(Math.log10(Math.abs(value))));
  return value.toFixed(Math.min(decimals, 12)).replace('-', '−');
}
