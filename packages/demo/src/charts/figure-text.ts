/**
 * A figure with three significant digits, as a reader expects it beside its unit.
 *
 * @param value - the figure
 * @param digits - significant digits, 3 unless told
 * @returns plain decimals from a millionth to a million, powers of ten beyond; thousands stand apart by a thin space
 */
export function figureText(value: number, digits = 3): string {
  if (!Number.isFinite(value)) return '–';
  if (value === 0) return '0';
  const size = Math.abs(value);
  if (size < 1e-6 || size >= 1e6) return powerOfTen(value, digits);
  const magnitude = Math.floor(Math.log10(size));
  const decimals = Math.max(0, digits - 1 - magnitude);
  const [whole = '', fraction] = value.toFixed(decimals).replace('-', '−').split('.');
  const grouped = whole.length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, '\u202f') : whole;
  return fraction === undefined ? grouped : `${grouped}.${fraction}`;
}

function powerOfTen(value: number, digits: number): string {
  const [mantissa = '', exponent = ''] = value.toExponential(digits - 1).split('e');
  const raised = Array.from(exponent.replace('+', ''), (sign) => SUPERSCRIPTS[sign] ?? sign).join('');
  return `${mantissa.replace('-', '−')} × 10${raised}`;
}

const SUPERSCRIPTS: Readonly<Record<string, string>> = {
  '-': '⁻',
  0: '⁰',
  1: '¹',
  2: '²',
  3: '³',
  4: '⁴',
  5: '⁵',
  6: '⁶',
  7: '⁷',
  8: '⁸',
  9: '⁹',
};
