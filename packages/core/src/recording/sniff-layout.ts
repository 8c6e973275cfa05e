import Papa from 'papaparse';
import { decimalCommas } from './decimal-commas.js';
import { numberReader, numberStyle, type NumberStyle } from './read-number.js';
import { stampForm } from './read-stamp.js';
import { parseUnit } from './units.js';

/** How a delimited text is laid out: where its figures begin and how they are written. */
export interface Layout {
  readonly separator: string;
  readonly style: NumberStyle;
  /** Figures in a row. */
  readonly width: number;
  /** 2 where a comma parts the columns and stands in every figure too. */
  readonly cellsPerFigure: 1 | 2;
  /** Lines before the first row of figures. */
  readonly headLines: number;
  /** Header cells, empty strings where there are none. */
  readonly headers: readonly string[];
  /** 1-based line of the header; 0 where there is none. */
  readonly headerLine: number;
  readonly units: readonly string[];
  /** Rate and unit that a head of words states. */
  readonly stated: { readonly rate?: number; readonly unit?: string };
  /** The first rows of figures. */
  readonly rows: readonly (readonly string[])[];
}

const SAMPLED_LINES = 400;
const SEPARATORS = [';', '\t', '|', ',', ' '] as const;
const COMMENT = /^\s*(#|\/\/|%|;(?=[^\d]*$)|\*)/;

/** Words that loggers write where there is no figure. */
const MISSING =
  /^(nan|null|none|n\/?a|inf|-inf|infinity|error|err|fehler|missing|undefined|-+|#.*[!?]|\?)?$/i;

/**
 * Finds separator, decimal mark, head and first row of figures.
 *
 * @param text - the file with `\n` between lines
 * @returns undefined where there is no row of figures; `headers` then come from {@link headCells}
 */
export function sniffLayout(text: string): Layout | undefined {
  const lines = firstLines(text);
  const told = /^\s*"?sep=(.)"?\s*$/i.exec(lines[0] ?? '')?.[1];
  const start = told === undefined ? 0 : 1;
  const best = bestSplit(lines, start, told);
  if (!best) return undefined;
  const { separator, first } = best;
  const headLines = lines.slice(0, first);
  const names = headerNames(headLines.slice(start), separator);
  const commas = separator === ',' ? decimalCommas(best.rows, { names, line: first + 1 }) : undefined;
  const width = commas ? best.width / 2 : best.width;
  const head = readHead({ lines: headLines, start, separator, width });
  return {
    separator,
    style: commas ? { decimal: ',', thousands: '' } : best.style,
    width,
    cellsPerFigure: commas ? 2 : 1,
    headLines: first,
    ...(commas ? head : besideRowNames(head, best.rows)),
    rows: commas ?? best.rows,
  };
}

/** How many names the last line above the figures holds; 0 where it holds none. */
function headerNames(lines: readonly string[], separator: string): number {
  const last = lines.findLast((line) => !isSkipped(line));
  const cells = last === undefined ? [] : splitLine(last, separator);
  return cells.every((cell) => !/\p{L}/u.test(cell)) ? 0 : cells.length;
}

/** A head one name short, over rows that begin with their number, leaves that number without a name. */
function besideRowNames(head: Head, rows: readonly (readonly string[])[]): Head {
  const { headers } = head;
  if (head.headerLine === 0 || headers.length < 3 || headers.at(-1) !== '') return head;
  const first = Number(rows[0]?.[0]);
  const numbered = rows.every((row, i) => Number(row[0]) === first + i && row.at(-1)?.trim() !== '');
  if (!numbered || !(first === 0 || first === 1) || rows.length < 3) return head;
  return { ...head, headers: ['row', ...headers.slice(0, -1)] };
}

/** The cells of the last line that has words in it, for a file without figures. */
export function headCells(text: string): readonly string[] {
  const line = firstLines(text).findLast((candidate) => candidate.trim() !== '') ?? '';
  return line.split(/[;,\t|]/).map((cell) => cell.trim());
}

function firstLines(text: string): string[] {
  const lines: string[] = [];
  let position = 0;
  while (lines.length < SAMPLED_LINES && position < text.length) {
    const end = text.indexOf('\n', position);
    const stop = end === -1 ? text.length : end;
    lines.push(text.slice(position, Math.min(stop, position + 20_000)).replace(/\r$/, ''));
    position = stop + 1;
  }
  return lines;
}

interface Split {
  readonly separator: string;
  readonly style: NumberStyle;
  readonly width: number;
  readonly first: number;
  readonly rows: readonly (readonly string[])[];
  readonly score: number;
}

function bestSplit(lines: readonly string[], start: number, told: string | undefined): Split | undefined {
  const candidates = told === undefined ? SEPARATORS : [told];
  const splits = candidates.flatMap((separator) => splitBy(lines, { start, separator }) ?? []);
  return splits.reduce<Split | undefined>(
    (best, split) => (best && best.score >= split.score ? best : split),
    undefined,
  );
}

function splitBy(
  lines: readonly string[],
  { start, separator }: { start: number; separator: string },
): Split | undefined {
  const cells = lines.map((line, i) => (i < start || isSkipped(line) ? [] : splitLine(line, separator)));
  const style = numberStyle(cells.flat(), separator === ',');
  const isFigure = figureTest(style);
  const isRow = (row: readonly string[]): boolean => looksLikeRow(row, isFigure);
  const width = commonWidth(cells.filter(isRow));
  if (width === 0) return undefined;
  const first = cells.findIndex(
    (row) => isRow(row) && trimmedWidth(row) <= width && row.length >= Math.min(width, 2),
  );
  const rows = cells.slice(first).filter((row) => row.length > 0);
  const good = rows.filter((row) => row.length === width).flat();
  const figures = good.filter(isFigure).length;
  const words = good.filter((cell) => !isFigure(cell) && !MISSING.test(cell.trim())).length;
  const purity = figures / Math.max(figures + words, 1);
  const regular = rows.filter((row) => row.length === width).length / rows.length;
  const score = purity * regular * (width > 1 ? 1 : 0.5) * Math.min(1, figures / (rows.length * 0.9));
  return { separator, style, width, first, rows: rows.filter((row) => row.length >= width), score };
}

function figureTest(style: NumberStyle): (cell: string) => boolean {
  const read = numberReader(style);
  return (cell) => !Number.isNaN(read(cell)) || stampForm(cell) !== undefined;
}

function looksLikeRow(row: readonly string[], isFigure: (cell: string) => boolean): boolean {
  const figures = row.filter(isFigure).length;
  const words = row.filter((cell) => !isFigure(cell) && !MISSING.test(cell.trim())).length;
  return figures > 0 && figures >= words && (row.length < 3 || figures > 1 || words === 0);
}

function commonWidth(rows: readonly (readonly string[])[]): number {
  const counts = new Map<number, number>();
  for (const row of rows) counts.set(row.length, (counts.get(row.length) ?? 0) + 1);
  return [...counts].reduce<[number, number]>(
    (best, entry) => (entry[1] > best[1] ? entry : best),
    [0, 0],
  )[0];
}

function trimmedWidth(row: readonly string[]): number {
  return row.findLastIndex((cell) => cell.trim() !== '') + 1;
}

function isSkipped(line: string): boolean {
  return line.trim() === '' || COMMENT.test(line);
}

function splitLine(line: string, separator: string): string[] {
  const plain = separator === ' ' ? line.trim().replace(/\s+/g, ' ') : line;
  return Papa.parse<string[]>(plain, { delimiter: separator, newline: '\n' }).data[0] ?? [];
}

type Head = Pick<Layout, 'headers' | 'headerLine' | 'units' | 'stated'>;

interface HeadSource {
  readonly lines: readonly string[];
  readonly start: number;
  readonly separator: string;
  readonly width: number;
}

function readHead({ lines, start, separator, width }: HeadSource): Head {
  const fits = (cells: readonly string[]): boolean =>
    cells.length > 1 || width === 1 ? Math.abs(cells.length - width) <= 1 : false;
  const entries = lines.map((line, i) => ({ line, number: i + 1, comment: COMMENT.test(line) })).slice(start);
  const split = entries.map((entry) => ({
    ...entry,
    cells: splitLine(entry.line.replace(/^\s*(#|\/\/|%|\*)+\s*/, ''), separator).map((cell) => cell.trim()),
  }));
  const table = split.filter(({ cells, line }) => line.trim() !== '' && fits(cells));
  const unitsEntry = table.findLast(({ cells }) => isUnitsRow(cells));
  const named = table.filter((entry) => entry !== unitsEntry);
  const header =
    named.findLast(({ comment }) => !comment) ?? named.findLast(({ cells }) => cells.length === width);
  return {
    headers: Array.from({ length: width }, (_, i) => header?.cells[i] ?? ''),
    headerLine: header?.number ?? 0,
    units: Array.from({ length: width }, (_, i) => unitsEntry?.cells[i] ?? ''),
    stated: statedFacts(
      split.filter((entry) => entry !== header && entry !== unitsEntry).map(({ line }) => line),
    ),
  };
}

function isUnitsRow(cells: readonly string[]): boolean {
  const filled = cells.filter((cell) => cell !== '');
  // A row of one-letter axis names is no row of units, though some letters are both.
  return (
    filled.length > 1 &&
    filled.every((cell) => parseUnit(cell) !== undefined) &&
    !/^t$/i.test(filled[0] ?? '')
  );
}

/** Rate and unit in lines such as `# rate: 200` or `Unit;g`. */
function statedFacts(lines: readonly string[]): Layout['stated'] {
  let rate: number | undefined;
  let unit: string | undefined;
  for (const line of lines) {
    const rateMatch =
      /(?:rate|frequen\w*|frequenz|abtastrate|fréquence|frecuencia|frequenza|bemonstering\w*|\bfs|\bodr)\b[^\d]*(\d+(?:[.,]\d+)?)\s*(k?)(?:hz)?/i.exec(
        line,
      );
    if (rateMatch?.[1] !== undefined)
      rate = Number(rateMatch[1].replace(',', '.')) * (rateMatch[2] ? 1000 : 1);
    const unitMatch = /(?:units?|einheit(?:en)?|unité|unidad|unità|eenheid)\W+([^\s,;|]+)/i.exec(line);
    if (unitMatch?.[1] !== undefined && parseUnit(unitMatch[1])?.quantity === 'acceleration')
      unit = unitMatch[1];
  }
  return { ...(rate !== undefined && rate > 0 ? { rate } : {}), ...(unit === undefined ? {} : { unit }) };
}
