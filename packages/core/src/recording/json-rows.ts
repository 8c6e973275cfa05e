import { RecordingError } from './recording-error.js';

/** One row of a JSON file; `value` is undefined where its text is no JSON. */
export interface JsonRow {
  readonly value: unknown;
  /** 1-based */
  readonly line: number;
  /** Characters it takes in the file, as far as that is known; else 0. */
  readonly length: number;
}

/** Characters in which the list of rows begins. */
const HEAD = 20_000;

/** Hands over rows from the first, until the visitor returns false. */
export type JsonWalk = (visit: (row: JsonRow) => boolean) => void;

/**
 * Finds the rows of a JSON text without laying them all out at once.
 *
 * @param text - the file, `\n` between lines
 * @returns undefined where the text is no JSON at all
 * @throws RecordingError where it begins as JSON and then is none
 */
export function jsonRows(text: string): JsonWalk | undefined {
  const start = text.length - text.trimStart().length;
  if (!/^[{[]\s*(["{[\]}\d-]|$)/.test(text.slice(start, start + 200))) return undefined;
  const lineEnd = text.indexOf('\n', start);
  const more = lineEnd !== -1 && /\S/.test(text.slice(lineEnd, lineEnd + 1000));
  if (more && parseOr(text.slice(start, lineEnd)) !== undefined) return byLines(text);
  for (const list of text.slice(start, start + HEAD).matchAll(/\[\s*[{[]/g)) {
    const walk = byItems(text, start + list.index);
    if (walk) return walk;
  }
  return byIndex(text);
}

function parseOr(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return undefined;
  }
}

function byLines(text: string): JsonWalk {
  return (visit) => {
    let position = 0;
    for (let line = 1; position < text.length; line++) {
      const end = text.indexOf('\n', position);
      const stop = end === -1 ? text.length : end;
      const row = text.slice(position, stop).trim();
      const length = stop + 1 - position;
      position = stop + 1;
      if (row !== '' && !visit({ value: parseOr(row.replace(/,$/, '')), line, length })) return;
    }
  };
}

/**
 * The items of the list that begins at `open`; what stands around the list must be JSON with the list left empty.
 * Undefined where it holds fewer than two.
 */
function byItems(text: string, open: number): JsonWalk | undefined {
  let items = 0;
  const close = eachItem(text, open, () => items++ < Infinity);
  const around = close === undefined ? '' : `${text.slice(0, open)}[]${text.slice(close)}`;
  if (parseOr(around) === undefined) throw damaged(text);
  if (items < 2) return undefined;
  return (visit) => {
    eachItem(text, open, ({ from, to, line }) =>
      visit({ value: parseOr(text.slice(from, to)), line, length: to - from + 2 }),
    );
  };
}

interface Item {
  readonly from: number;
  readonly to: number;
  readonly line: number;
}

const QUOTE = 0x22;
const BACKSLASH = 0x5c;
const COMMA = 0x2c;
const OPENING = new Set([0x5b, 0x7b]);
const CLOSING = new Set([0x5d, 0x7d]);

/** The place after the list, undefined where it does not end or the visitor has had enough. */
function eachItem(text: string, open: number, visit: (item: Item) => boolean): number | undefined {
  let depth = 0;
  let from = open + 1;
  let line = 1;
  for (let i = 0; i < open; i++) if (text.charCodeAt(i) === 10) line++;
  let itemLine = line;
  for (let i = open; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code === 10) line++;
    else if (code === QUOTE) i = closingQuote(text, i);
    else if (OPENING.has(code)) {
      if (depth++ === 1) itemLine = line;
    } else if (CLOSING.has(code)) {
      if (--depth > 0) continue;
      if (/\S/.test(text.slice(from, i)) && !visit({ from, to: i, line: itemLine })) return undefined;
      return i + 1;
    } else if (code === COMMA && depth === 1) {
      if (!visit({ from, to: i, line: itemLine })) return undefined;
      from = i + 1;
    }
  }
  return undefined;
}

function closingQuote(text: string, open: number): number {
  let i = open + 1;
  while (i < text.length && text.charCodeAt(i) !== QUOTE) i += text.charCodeAt(i) === BACKSLASH ? 2 : 1;
  return i;
}

/** The rows of `{ "t": [ … ], "x": [ … ] }`, or of one list of figures. */
function byIndex(text: string): JsonWalk {
  const value = parseOr(text);
  if (value === undefined) throw damaged(text);
  const entries = Object.entries(Array.isArray(value) ? { '': value as unknown[] } : (value ?? {}));
  const lists = entries.filter(
    (entry): entry is [string, unknown[]] => Array.isArray(entry[1]) && entry[1].length > 1,
  );
  const rows = lists.reduce((most, [, list]) => Math.max(most, list.length), 0);
  return (visit) => {
    for (let i = 0; i < rows; i++) {
      const row = Object.fromEntries(lists.map(([name, list]) => [name, list[i]]));
      if (!visit({ value: row, line: 1, length: text.length / rows })) return;
    }
  };
}

function damaged(text: string): RecordingError {
  let line = 1;
  for (let i = text.indexOf('\n'); i !== -1; i = text.indexOf('\n', i + 1)) line++;
  return new RecordingError('readDelimited', {
    code: 'bad-json',
    line,
    found: 'the text begins as JSON but does not hold together to its end.',
    remedy: 'Export the recording again, or as CSV.',
  });
}
