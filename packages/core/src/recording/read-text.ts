import { chooseColumns } from './choose-columns.js';
import { finishMotion } from './finish-motion.js';
import { jsonTable } from './json-table.js';
import { layInTime } from './lay-in-time.js';
import { readColumns } from './read-columns.js';
import { RecordingError } from './recording-error.js';
import { scaleAxes } from './scale-axes.js';
import { textTable, type Table } from './text-table.js';
import { type Recording, type TextHints } from './types.js';

/**
 * Reads a text, whatever its name or the caller says about it.
 *
 * @param text - the whole file as text
 * @param hints - what the caller and the file's name say
 * @throws RecordingError where the text holds no recording
 */
export function readText(text: string, hints: TextHints): Recording {
  const plain = tidy(text);
  refuseForeign(plain);
  const table = jsonTable(plain) ?? textTable(plain);
  try {
    return readTable(table, hints);
  } catch (error) {
    // A fault of a whole column stands at its head.
    throw error instanceof RecordingError ? error.at(table.headerLine || table.firstLine) : error;
  }
}

function readTable(table: Table, hints: TextHints): Recording {
  const plan = chooseColumns(table, hints);
  const raw = readColumns(table, plan);
  if (raw.rows < 3) throw tooShort(raw.rows);
  const scale = scaleAxes(raw.axes, plan, hints.gravity);
  const laid = layInTime({ table, plan, raw, options: hints });
  return finishMotion({ table, plan, raw, scale, laid, name: hints.name ?? 'recording' });
}

/** Characters in which line ends are looked at. */
const LINE_ENDS = 20_000;

/** Lines that end in a carriage return alone are rewritten; a return before a line feed does no harm further on. */
function tidy(text: string): string {
  const open = text.charCodeAt(0) === 0xfeff ? text.slice(1) : text;
  return /\r(?!\n)/.test(open.slice(0, LINE_ENDS)) ? open.replace(/\r\n?/g, '\n') : open;
}

const FOREIGN: readonly (readonly [RegExp, string])[] = [
  [/^PK\u0003\u0004/, 'a zip archive or a spreadsheet file'],
  [/^RIFF/, 'a WAV or AVI file'],
  [/^%PDF/, 'a PDF document'],
  [/^\s*<(!doctype|html|\?xml|svg)/i, 'a page or XML document'],
];

function refuseForeign(text: string): void {
  if (text.trim() === '') {
    throw new RecordingError('readDelimited', {
      code: 'empty',
      line: 1,
      found: 'the file is empty.',
      remedy: 'Export the recording again, and look whether the logger had room to write.',
    });
  }
  const head = text.slice(0, 4096);
  const known = FOREIGN.find(([pattern]) => pattern.test(head))?.[1];
  const controls = head.replace(/[^\u0000-\u0008\u000e-\u001f\ufffd]/g, '').length;
  if (known === undefined && controls <= 0.02 * head.length) return;
  throw new RecordingError('readDelimited', {
    code: 'not-text',
    line: 1,
    found: `this is not plain text but ${known ?? 'a binary file'}.`,
    remedy: known?.startsWith('a zip')
      ? 'Unpack it, or save the sheet as CSV.'
      : 'Export the recording as CSV; read sound with readWav.',
  });
}

function tooShort(rows: number): RecordingError {
  return new RecordingError('readDelimited', {
    code: 'too-short',
    found: `there are ${rows} rows that can be read, too few for a recording.`,
    remedy: 'Record for some seconds, or look whether the right columns are chosen.',
  });
}
