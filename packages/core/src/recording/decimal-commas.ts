import { RecordingError } from './recording-error.js';

interface Told {
  /** How many names the head holds; 0 where there is none. */
  readonly names: number;
  /** 1-based line of the first row. */
  readonly line: number;
}

type Rows = readonly (readonly string[])[];

/** Share of the rows that must have the full length. */
const REGULAR = 0.9;

/**
 * Joins the cells of a file that writes a comma both between its columns and before its decimals: `0,0050,1,25` is two
 * figures.
 *
 * @param rows - the first rows, parted at every comma
 * @param told - what the head says
 * @returns the rows with their figures joined; undefined where commas only part the columns
 * @throws RecordingError where they do both and the columns cannot be told for certain
 */
export function decimalCommas(rows: Rows, { names, line }: Told): Rows | undefined {
  if (!wholeOnly(rows)) return undefined;
  const filled = rows.filter((row) => row.some((cell) => cell.trim() !== ''));
  const widths = filled.map((row) => row.findLastIndex((cell) => cell.trim() !== '') + 1);
  const widest = Math.max(0, ...widths);
  const more = names > 0 && widths.filter((width) => width > names).length > 0.5 * widths.length;
  if (!more && !(names === 0 && splitFraction(filled))) return undefined;
  const figures = names > 0 ? names : widest / 2;
  const whole = filled.filter((row) => row.length === 2 * figures && inPairs(row));
  if (Number.isInteger(figures) && whole.length >= REGULAR * filled.length) {
    return whole.map((row) => joinPairs(row, figures));
  }
  throw new RecordingError('readDelimited', {
    code: 'ragged',
    line,
    found: `the comma stands both between the columns and in the figures: ${names > 0 ? `${names} names stand over` : 'there are'} up to ${widest} cells in a row.`,
    remedy: 'Export it with semicolons or tabs between the columns, or with points as decimal marks.',
  });
}

/**
 * One row with its pairs joined. A row of another length comes back longer than any, so that it is counted and left out
 * and not read wrong.
 */
export function joinPairs(row: readonly string[], width: number): string[] {
  if (row.every((cell) => cell.trim() === '')) return [...row];
  if (row.length !== 2 * width || !inPairs(row)) return [...row, ...Array.from({ length: width }, () => '?')];
  return Array.from({ length: width }, (_, i) => `${row[2 * i] ?? ''},${row[2 * i + 1] ?? ''}`);
}

function inPairs(row: readonly string[]): boolean {
  return row.every((cell, i) =>
    i % 2 === 0 ? /^\s*[+-]?\d+$/.test(cell) : /^\d+(e[+-]?\d+)?\s*$/i.test(cell),
  );
}

function wholeOnly(rows: Rows): boolean {
  let whole = 0;
  let other = 0;
  for (const cell of rows.flat()) {
    if (/^\s*[+-]?\d+(e[+-]?\d+)?\s*$/i.test(cell)) whole++;
    else if (cell.trim() !== '') other++;
  }
  return whole > 0 && other <= 0.02 * whole;
}

/**
 * Without names, a fraction shows by a zero that leads other digits, or by the sign on a zero before it: no whole number
 * is written so. Zeros that lead at even places alone are those of clocks and dates.
 */
function splitFraction(rows: Rows): boolean {
  const share = (telling: (cell: string, i: number) => boolean): number =>
    rows.filter((row) => row.some((cell, i) => telling(cell.trim(), i))).length / rows.length;
  const signed = share((cell) => /^-0$/.test(cell));
  const leading = share((cell, i) => i % 2 === 1 && /^0\d+$/.test(cell));
  const contrary = share((cell, i) => i % 2 === 0 && /^[+-]?0\d/.test(cell));
  return signed > 0.02 || (leading > 0.2 && contrary === 0);
}
