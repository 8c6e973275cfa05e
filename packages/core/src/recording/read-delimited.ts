import { checkPositive } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import { chooseColumns } from './choose-columns.js';
import { finishMotion } from './finish-motion.js';
import { jsonTable } from './json-table.js';
import { layInTime } from './lay-in-time.js';
import { readColumns } from './read-columns.js';
import { RecordingError } from './recording-error.js';
import { scaleAxes } from './scale-axes.js';
import { textTable, type Table } from './text-table.js';
import { type ReadDelimitedOptions, type Recording } from './types.js';

/**
 * Reads the text of any logger or spreadsheet: delimited rows or JSON, with its separator, decimal mark, head, units
 * and time column found out from the text itself.
 *
 * @param text - the whole file as text; {@link decodeText} makes it from bytes
 * @param options - what the caller knows better than the file
 * @returns accelerations in m/s² on a uniform time base; `sampling` tells what each column was taken for and how well
 *   the recording was taken
 * @throws RangeError where an option is out of its domain
 * @throws RecordingError where the text holds no recording: it says what was found, where, and what to do
 * @remarks Phones sample evenly and stamp badly, so the rate is fitted to the stamps over the whole recording and the
 *   samples are taken by their count. Only where the rate itself moves are they interpolated, and
 *   `sampling.timeBase` and `sampling.passband` say so. Missing rows lie on a straight line and are listed in
 *   `sampling.gaps`. The last stretch of time counts as one sample more than the last stamp shows.
 * @example
 * const text = 't (ms);x (mg);y (mg);z (mg)\n0;0;5;1000\n5;7;0;1000\n10;0;-5;1000\n15;-7;0;1000\n20;0;5;1000\n';
 * const recording = readDelimited(text);
 * recording.sampleRate // → 200.0
 * recording.channels[2].samples[0] // → 9.80665
 * recording.sampling.columns.map((column) => column.role) // → ['time', 'x', 'y', 'z']
 * readDelimited('frequency;amplitude\n0;0.1\n1;0.3\n2;0.2\n') // → throws looks like a spectrum
 * @see RFC 4180, Common Format and MIME Type for Comma-Separated Values (CSV) Files, 2005, of which most files are cousins
 */
export function readDelimited(text: string, options: ReadDelimitedOptions = {}): Recording {
  if (typeof text !== 'string') throw refusal('readDelimited: text', 'a string', text);
  if (options.sampleRate !== undefined) checkPositive('readDelimited: sampleRate', options.sampleRate);
  const plain = tidy(text);
  refuseForeign(plain);
  const table = jsonTable(plain) ?? textTable(plain);
  try {
    return readTable(table, options);
  } catch (error) {
    // A fault of a whole column stands at its head.
    throw error instanceof RecordingError ? error.at(table.headerLine || table.firstLine) : error;
  }
}

function readTable(table: Table, options: ReadDelimitedOptions): Recording {
  const plan = chooseColumns(table, options);
  const raw = readColumns(table, plan);
  if (raw.rows < 3) throw tooShort(raw.rows);
  const scale = scaleAxes(raw.axes, plan, options.gravity);
  const laid = layInTime({ table, plan, raw, options });
  return finishMotion({ table, plan, raw, scale, laid, name: options.name ?? 'recording' });
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
