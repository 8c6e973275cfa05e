import { checkPositive } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import { readText } from './read-text.js';
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
  return readText(text, options);
}
