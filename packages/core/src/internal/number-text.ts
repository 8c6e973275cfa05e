/**
 * A number for a sentence: `significant` digits, never in powers of ten, thousands set apart by a narrow no-break space.
 */
export function numberText(value: number, significant = 3): string {
  if (value === 0 || !Number.isFinite(value)) return String(value);
  const rounded = Number(value.toPrecision(significant));
  const places = significant - 1 - Math.floor(Math.log10(Math.abs(rounded)));
  const [whole = '', fraction] = rounded.toFixed(Math.max(0, Math.min(places, 12))).split('.');
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, '\u202f');
  return fraction === undefined ? grouped : `${grouped}.${fraction}`;
}
