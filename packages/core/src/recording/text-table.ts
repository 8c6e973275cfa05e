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
    const { end, open } = quoted
      ? quotedBlockEnd(text, position)
      : { end: blockEnd(text, position), open: false };
    const block = plainBlock(text.slice(position, end), { separator, open });
    const rows = Papa.parse<string[]>(block, { delimiter: separator, newline: '\n' }).data;
    visit(cellsPerFigure === 2 ? rows.map((row) => joinPairs(row, width)) : rows, line);
    line += quoted ? countLines(text, position, end) : rows.length - (block.endsWith('\n') ? 1 : 0);
    position = end;
  }
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
    for (let i = from; i < end; i++) if (text.charCodeAt(i) === 0x22) open = !open;
    if (!open) return { end, open };
    if (end === text.length || end - first > BLOCK_CHARACTERS) return { end: first, open };
    from = end;
    const next = text.indexOf('\n', end);
    end = next === -1 ? text.length : next + 1;
  }
}

function plainBlock(block: string, { separator, open }: { separator: string; open: boolean }): string {
  const lines = block.includes('\r') ? block.replace(/\r\n?/g, '\n') : block;
  const whole = open ? lines.replaceAll('"', '') : lines;
  return separator === ' ' ? whole.replace(/^[ \t]+|[ \t]+$/gm, '').replace(/[ \t]+/g, ' ') : whole;
}

function countLines(text: string, from: number, to: number): number {
  let count = 0;
  for (let i = from; i < to; i++) if (text.charCodeAt(i) === 10) count++;
  return count;
}
