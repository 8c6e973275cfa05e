/**
 * Reads a number as people write it: decimal point or comma, spaces between thousands, a true minus, a fraction
 * of an inch such as `3/16` or `1 3/16`.
 *
 * @param text - what stands in the field
 * @returns the number; undefined for an empty text; NaN for a text that is no number
 */
export function parseNumber(text: string): number | undefined {
  const tidy = text.trim().replace(/\u2212/g, '-');
  if (tidy === '') return undefined;
  const fraction = /^(-?)(?:(\d+)\s+)?(\d+)\s*\/\s*(\d+)$/.exec(tidy);
  if (fraction) return readFraction(fraction);
  return readDecimal(tidy.replace(/[\s\u00a0\u202f\u2009']/g, ''));
}

function readFraction([, sign, whole, over, under]: RegExpExecArray): number {
  const value = Number(whole ?? 0) + Number(over) / Number(under);
  if (!Number.isFinite(value)) return NaN;
  return sign === '-' ? -value : value;
}

// Where comma and point both stand, the last of them is the decimal mark and the others part thousands.
function readDecimal(text: string): number {
  const mark = Math.max(text.lastIndexOf(','), text.lastIndexOf('.'));
  if (mark < 0) return toNumber(text);
  const both = text.includes(',') && text.includes('.');
  const whole = text.slice(0, mark);
  if (!both && /[.,]/.test(whole)) return NaN;
  return toNumber(`${both ? whole.replace(/[.,]/g, '') : whole}.${text.slice(mark + 1)}`);
}

function toNumber(text: string): number {
  return /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(text) ? Number(text) : NaN;
}
