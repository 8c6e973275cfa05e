import { RecordingError } from './recording-error.js';
import { jsonRows, type JsonRow } from './json-rows.js';
import { type Table } from './text-table.js';

const DEEPEST = 3;
const PREVIEW = 400;

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
  const names = new Set(preview.flatMap(({ value }) => [...flatten(value).keys()]));
  const headers = [...names];
  if (headers.length === 0) throw withoutValues();
  const cellsOf = ({ value }: JsonRow): string[] => {
    // A line that is no JSON has the width of no row, and so is counted among the rows left out.
    if (value === undefined) return [...headers.map(() => '?'), '?'];
    const cells = flatten(value);
    return headers.map((name) => cells.get(name) ?? '');
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

function flatten(value: unknown): Map<string, string> {
  const cells = new Map<string, string>();
  collect({ value, path: '', depth: 0 }, cells);
  return cells;
}

function collect(
  { value, path, depth }: { value: unknown; path: string; depth: number },
  cells: Map<string, string>,
): void {
  if (typeof value === 'number' || typeof value === 'string') cells.set(path, String(value));
  if (typeof value !== 'object' || value === null || depth >= DEEPEST) return;
  const entries = Object.entries(value as Record<string, unknown>).slice(0, 64);
  const vector = Array.isArray(value) && value.length === 3 && path !== '';
  for (const [name, item] of entries) {
    const key = vector ? ('xyz'[Number(name)] ?? name) : name;
    collect({ value: item, path: path === '' ? key : `${path} ${key}`, depth: depth + 1 }, cells);
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
