import { RecordingError } from './recording-error.js';
import { type Table } from './text-table.js';

const DEEPEST = 3;

/**
 * Lays JSON out as a table: one object or list a line, a list of them, or one object of lists.
 *
 * @param text - the file, `\n` between lines
 * @returns undefined where the text is no JSON at all
 * @throws RecordingError where it begins as JSON and then is none
 */
export function jsonTable(text: string): Table | undefined {
  const start = text.trimStart();
  if (!/^[{[]\s*(["{[\]}\d-]|$)/.test(start)) return undefined;
  const firstLine = start.slice(0, start.includes('\n') ? start.indexOf('\n') : undefined);
  const lines =
    parseOr(firstLine) !== undefined &&
    start.length > firstLine.length + 1 &&
    start.slice(firstLine.length).trim() !== '';
  const records = lines ? fromLines(text) : fromWhole(text);
  return tableOf(records);
}

interface JsonRow {
  readonly cells: ReadonlyMap<string, string>;
  readonly line: number;
}

function parseOr(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return undefined;
  }
}

function fromLines(text: string): JsonRow[] {
  return text.split('\n').flatMap((line, i) => {
    if (line.trim() === '') return [];
    return [{ cells: flatten(parseOr(line.trim().replace(/,$/, ''))), line: i + 1 }];
  });
}

function fromWhole(text: string): JsonRow[] {
  const value = parseOr(text);
  if (value === undefined) throw damaged(text);
  const list = Array.isArray(value) ? (value as unknown[]) : listWithin(value);
  return list.map((item) => ({ cells: flatten(item), line: 0 }));
}

/** The rows of `{ "samples": [ … ] }` or of `{ "t": [ … ], "x": [ … ] }`. */
function listWithin(value: unknown): readonly unknown[] {
  const entries = Object.entries(value ?? {}) as [string, unknown][];
  const lists = entries.filter(
    (entry): entry is [string, unknown[]] => Array.isArray(entry[1]) && entry[1].length > 1,
  );
  const rows = lists.find(([, list]) => typeof list[0] === 'object');
  if (rows) return rows[1];
  const length = lists.reduce((most, [, list]) => Math.max(most, list.length), 0);
  return Array.from({ length }, (_, i) => Object.fromEntries(lists.map(([name, list]) => [name, list[i]])));
}

function damaged(text: string): RecordingError {
  const line = text.split('\n').length;
  return new RecordingError('readDelimited', {
    code: 'bad-json',
    line,
    found: 'the text begins as JSON but does not hold together to its end.',
    remedy: 'Export the recording again, or as CSV.',
  });
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

function tableOf(records: readonly JsonRow[]): Table {
  const names = new Set<string>();
  for (const { cells } of records.slice(0, 400)) for (const name of cells.keys()) names.add(name);
  const headers = [...names];
  if (headers.length === 0) throw withoutValues();
  const rows = records.map(({ cells }) => headers.map((name) => cells.get(name) ?? ''));
  return {
    headers: headers.every((name) => /^\d*$/.test(name)) ? headers.map(() => '') : headers,
    headerLine: 0,
    units: headers.map(() => ''),
    stated: {},
    style: { decimal: '.', thousands: '' },
    width: headers.length,
    preview: rows.slice(0, 400),
    expectedRows: rows.length + 1,
    forEachBlock: (visit) => {
      rows.forEach((row, i) => {
        visit([row], records[i]?.line ?? 0);
      });
    },
  };
}

function withoutValues(): RecordingError {
  return new RecordingError('readDelimited', {
    code: 'no-rows',
    found: 'the text is JSON without any rows of values.',
    remedy: 'Export the recording as CSV, or as JSON with one object a sample.',
  });
}
