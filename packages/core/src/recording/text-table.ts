import Papa from 'papaparse';
import { joinPairs } from './decimal-commas.js';
import { type NumberStyle } from './read-number.js';
import { RecordingError } from './recording-error.js';
import { headCells, sniffLayout, type Layout } from './sniff-layout.js';

/** A file of rows and columns, whatever its form was. */
export interface Table {
  readonly headers: readonly string[];
  readonly headerLine: number;
  /** 1-based line of the first row. */
  readonly firstLine: number;
  readonly units: readonly string[];
  readonly stated: Layout['stated'];
  readonly style: NumberStyle;
  readonly width: number;
  /** The first rows. */
  readonly preview: readonly (readonly string[])[];
  /** About how many rows there are. */
  readonly expectedRows: number;
  /** Hands over all rows in blocks, each with the 1-based line of its first row. */
  readonly forEachBlock: (visit: (rows: readonly (readonly string[])[], line: number) => void) => void;
}

/** Small enough that a block's strings are dropped before the collector has to move them. */
const BLOCK_CHARACTERS = 1 << 16;
const QUOTE = 0x22;
const LINE_FEED = 0x0a;

/**
 * Lays a delimited text out as a table.
 *
 * @param text - the file, `\n` between lines, not blank
 * @throws RecordingError where there is no row of figures
 */
export function textTable(text: string): Table {
  const layout = sniffLayout(text);
  if (!layout) throw withoutRows(text);
  const body = skipLines(text, layout.headLines);
  return {
    ...layout,
    firstLine: layout.headLines + 1,
    preview: layout.rows,
    expectedRows: Math.ceil((1.05 * (text.length - body)) / meanLength(text, body)) + 16,
    forEachBlock: (visit) => {
      walk(text, body, layout, visit);
    },
  };
}

function withoutRows(text: string): RecordingError {
  const cells = headCells(text).filter((cell) => cell !== '');
  const named = cells.slice(0, 6).join(', ').slice(0, 120);
  return new RecordingError('readDelimited', {
    code: 'no-rows',
    line: 1,
    found: `there is a head (${named}) and no row of figures under it.`,
    remedy: 'Export the recording again, and look whether the logger was running.',
  });
}

function skipLines(text: string, count: number): number {
  let position = 0;
  for (let i = 0; i < count; i++) position = text.indexOf('\n', position) + 1;
  return position;
}

function meanLength(text: string, body: number): number {
  const sample = text.slice(body, body + 20_000);
  const lines = sample.split('\n').length - (sample.length === 20_000 ? 1 : 0);
  return Math.max(sample.length / Math.max(lines, 1), 2);
}

function walk(
  text: string,
  body: number,
  { separator, headLines, width, cellsPerFigure }: Layout,
  visit: Parameters<Table['forEachBlock']>[0],
): void {
  const quoted = text.includes('"', body);
  let position = body;
  let line = headLines + 1;
  while (position < text.length) {
    const { block, end, lines } = quoted
      ? quotedBlock(text, position, separator)
      : openBlock(text, position, separator);
    const rows = Papa.parse<string[]>(block, { delimiter: separator, newline: '\n' }).data;
    visit(cellsPerFigure === 2 ? rows.map((row) => joinPairs(row, width)) : rows, line);
    line += lines ?? rows.length - (block.endsWith('\n') ? 1 : 0);
    position = end;
  }
}

interface Block {
  /** Whole rows, ready for the parser. */
  readonly block: string;
  /** Where the next one begins. */
  readonly end: number;
  /** Lines that it takes in the file; absent where each row is one. */
  readonly lines?: number;
}

function openBlock(text: string, position: number, separator: string): Block {
  const end = blockEnd(text, position);
  return { block: plainBlock(text.slice(position, end), separator), end };
}

function quotedBlock(text: string, position: number, separator: string): Block {
  const plain = openBlock(text, position, separator);
  // Without quotes the parser splits at every mark, where else it would search for the end of each cell.
  if (quotesAreIdle(plain.block, separator)) return { ...plain, block: plain.block.replaceAll('"', '') };
  const { end, open } = quotedBlockEnd(text, position);
  const block = plainBlock(text.slice(position, end), separator);
  return { block: open ? block.replaceAll('"', '') : block, end, lines: countLines(text, position, end) };
}

/** True where quotes stand around whole cells only, and no cell holds what they would protect. */
function quotesAreIdle(block: string, separator: string): boolean {
  const mark = separator.charCodeAt(0);
  let inside = false;
  // At the beginning of a cell, which is that of the block too.
  let before = LINE_FEED;
  for (let i = 0; i < block.length; i++) {
    const code = block.charCodeAt(i);
    const ends = code === mark || code === LINE_FEED;
    if (inside) {
      if (ends) return false;
      if (code === QUOTE) inside = false;
    } else if (code === QUOTE) {
      if (before !== mark && before !== LINE_FEED) return false;
      inside = true;
    } else if (before === QUOTE && !ends) return false;
    before = code;
  }
  return !inside;
}

function blockEnd(text: string, position: number): number {
  const end = text.indexOf('\n', position + BLOCK_CHARACTERS);
  return end === -1 ? text.length : end + 1;
}

/**
 * A quoted cell may hold a line break, which a block must not cut. A quote that is never closed would take all that
 * follows into one cell, so it is looked for in the next block only, and `open` tells that it was not found.
 */
function quotedBlockEnd(text: string, position: number): { end: number; open: boolean } {
  const first = blockEnd(text, position);
  let open = false;
  let end = first;
  let from = position;
  for (;;) {
    // Character by character: there may be eight quotes a row, and a search costs more than a look.
    for (let i = from; i < end; i++) if (text.charCodeAt(i) === QUOTE) open = !open;
    if (!open) return { end, open };
    if (end === text.length || end - first > BLOCK_CHARACTERS) return { end: first, open };
    from = end;
    const next = text.indexOf('\n', end);
    end = next === -1 ? text.length : next + 1;
  }
}

function plainBlock(block: string, separator: string): string {
  const lines = block.includes('\r') ? block.replace(/\r\n?/g, '\n') : block;
  return separator === ' ' ? lines.replace(/^[ \t]+|[ \t]+$/gm, '').replace(/[ \t]+/g, ' ') : lines;
}

function countLines(text: string, from: number, to: number): number {
  let count = 0;
  for (let i = from; i < to; i++) if (text.charCodeAt(i) === LINE_FEED) count++;
  return count;
}
