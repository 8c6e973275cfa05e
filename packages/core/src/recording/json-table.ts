import { RecordingError } from './recording-error.js';
import { jsonRows, type JsonRow } from './json-rows.js';
import { type Table } from './text-table.js';

const DEEPEST = 3;
const PREVIEW = 400;
/** In an object or list; a recording has no more columns. */
const MOST_NAMES = 64;

/**
 * Lays JSON out as a table: one object or list a line, a list of them, or one object of lists.
 *
 * @param text - the file, `\n` between lines
 * @returns undefined where the text is no JSON at all
 * @throws RecordingError where it begins as JSON and then is none
 * @remarks Rows are read one after another and let go, so that the memory does not grow with their number.
 */
export function jsonTable(text: string): Table | undefined {
  const walk = jsonRows(text);
  if (!walk) return undefined;
  const preview: JsonRow[] = [];
  walk((row) => preview.push(row) < PREVIEW);
  const places = new Map<string, number>();
  for (const { value } of preview)
    collect(value, (name) => places.has(name) || places.set(name, places.size));
  const headers = [...places.keys()];
  if (headers.length === 0) throw withoutValues();
  const cellsOf = ({ value }: JsonRow): string[] => {
    // A line that is no JSON has the width of no row, and so is counted among the rows left out.
    if (value === undefined) return [...headers.map(() => '?'), '?'];
    const cells = headers.map(() => '');
    collect(value, (name, cell) => {
      const place = places.get(name);
      if (place !== undefined) cells[place] = String(cell);
    });
    return cells;
  };
  const length = preview.reduce((sum, row) => sum + row.length, 0) / preview.length;
  return {
    headers: headers.every((name) => /^\d*$/.test(name)) ? headers.map(() => '') : headers,
    headerLine: 0,
    firstLine: preview[0]?.line ?? 1,
    units: headers.map(() => ''),
    stated: {},
    style: { decimal: '.', thousands: '' },
    width: headers.length,
    preview: preview.filter(({ value }) => value !== undefined).map(cellsOf),
    expectedRows: length > 0 ? Math.ceil((1.02 * text.length) / length) + 16 : 16,
    forEachBlock: (visit) => {
      walk((row) => {
        visit([cellsOf(row)], row.line);
        return true;
      });
    },
  };
}

type TakeCell = (name: string, cell: number | string) => void;

/** Hands over the values of a row, each under the names that lead to it. */
function collect(value: unknown, take: TakeCell, { path, depth } = { path: '', depth: 0 }): void {
  if (typeof value === 'number' || typeof value === 'string') take(path, value);
  if (typeof value !== 'object' || value === null || depth >= DEEPEST) return;
  const vector = Array.isArray(value) && value.length === 3 && path !== '';
  for (const [name, item] of Object.entries(value as Record<string, unknown>).slice(0, MOST_NAMES)) {
    const key = vector ? ('xyz'[Number(name)] ?? name) : name;
    collect(item, take, { path: path === '' ? key : `${path} ${key}`, depth: depth + 1 });
  }
}

function withoutValues(): RecordingError {
  return new RecordingError('readDelimited', {
    code: 'no-rows',
    line: 1,
    found: 'the text is JSON without any rows of values.',
    remedy: 'Export the recording as CSV, or as JSON with one object a sample.',
  });
}
