/** How the figures of a file are written. */
export interface NumberStyle {
  readonly decimal: '.' | ',';
  /** Mark between groups of three digits; empty where there is none. */
  readonly thousands: string;
}

/**
 * A reader of cells for one style of figures.
 *
 * @returns a function that gives the number in a cell, NaN where it holds none
 */
export function numberReader({ decimal, thousands }: NumberStyle): (cell: string) => number {
  const mark = decimal.charCodeAt(0);
  if (decimal === '.' && thousands === '')
    return (cell) => {
      const value = shortNumber(cell, mark);
      return Number.isNaN(value) ? finite(+cell, cell, cell) : value;
    };
  return (cell) => {
    const value = thousands === '' ? shortNumber(cell, mark) : NaN;
    if (!Number.isNaN(value)) return value;
    const joined = thousands === '' ? cell : cell.split(thousands).join('');
    const plain = decimal === '.' ? joined : joined.replace(',', '.');
    return finite(+plain, plain, cell);
  };
}

const POWERS = Array.from({ length: 16 }, (_, i) => 10 ** i);

/**
 * The number in a cell of digits with at most a sign and a mark; NaN for all other cells. Up to 15 digits and the power of
 * ten below them are exact in a double, so that their quotient is the double nearest to what is written.
 *
 * @see William Clinger, "How to read floating point numbers accurately", ACM SIGPLAN Notices 25(6), 1990
 */
function shortNumber(cell: string, mark: number): number {
  const length = cell.length;
  const first = cell.charCodeAt(0);
  let i = first === MINUS || first === PLUS ? 1 : 0;
  if (length - i > 16) return NaN;
  let value = 0;
  let digits = 0;
  let point = -1;
  for (; i < length; i++) {
    const code = cell.charCodeAt(i);
    if (code >= ZERO && code <= NINE) {
      value = 10 * value + (code - ZERO);
      digits++;
    } else if (code === mark && point < 0) point = digits;
    else return NaN;
  }
  if (digits === 0 || digits > 15) return NaN;
  const size = point < 0 ? value : value / (POWERS[digits - point] ?? NaN);
  return first === MINUS ? -size : size;
}

const MINUS = 0x2d;
const PLUS = 0x2b;
const ZERO = 0x30;
const NINE = 0x39;

function finite(value: number, plain: string, cell: string): number {
  if (value !== 0) {
    if (value - value === 0) return value;
    return cell.length > 40 ? NaN : second(plain);
  }
  return cell.trim() === '' ? NaN : value;
}

/** Signs and spaces that only type-setters and spreadsheets write. */
function second(plain: string): number {
  const cleaned = plain.replace(/[−–]/g, '-').replace(/[\s\u00a0\u202f'’"]/g, '');
  return /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(cleaned) ? Number(cleaned) : NaN;
}

/**
 * The style in which most of the cells are written.
 *
 * @param cells - a sample of the file's cells
 * @param commaSeparates - where the comma already parts the columns and stands inside quotes only
 */
export function numberStyle(cells: readonly string[], commaSeparates: boolean): NumberStyle {
  const votes = { commaDecimal: 0, commaGroup: 0, dotGroup: 0, dotDecimal: 0, apostrophe: 0 };
  for (const cell of cells) vote(cell.trim(), votes);
  if (votes.commaGroup > votes.commaDecimal) return { decimal: '.', thousands: ',' };
  if (votes.commaDecimal > 0)
    return { decimal: ',', thousands: votes.dotGroup > votes.dotDecimal ? '.' : '' };
  const openComma = cells.some((cell) => /^\s*[+-]?\d{1,3},\d{3}\s*$/.test(cell));
  if (openComma && votes.dotDecimal === 0 && !commaSeparates) return { decimal: ',', thousands: '' };
  if (openComma) return { decimal: '.', thousands: ',' };
  return { decimal: '.', thousands: votes.apostrophe > 0 ? "'" : '' };
}

interface Votes {
  commaDecimal: number;
  commaGroup: number;
  dotGroup: number;
  dotDecimal: number;
  apostrophe: number;
}

function vote(cell: string, votes: Votes): void {
  if (/^[+-]?\d{1,3}('\d{3})+(\.\d*)?$/.test(cell)) votes.apostrophe++;
  if (/^[+-]?[1-9]\d{0,2}(,\d{3})+\.\d*$|^[+-]?[1-9]\d{0,2}(,\d{3}){2,}$/.test(cell)) votes.commaGroup++;
  else if (/^[+-]?[1-9]\d{0,2}(\.\d{3})+,\d*$|^[+-]?[1-9]\d{0,2}(\.\d{3}){2,}$/.test(cell)) {
    votes.dotGroup++;
    votes.commaDecimal++;
  } else if (/^[+-]?(0?,\d+|0\d*,\d+|\d+,(\d{1,2}|\d{4,})|\d{4,},\d+|\d*,\d+e[+-]?\d+)$/i.test(cell))
    votes.commaDecimal++;
  else if (/^[+-]?(\d+\.\d*|\.\d+)(e[+-]?\d+)?$/i.test(cell)) votes.dotDecimal++;
}
