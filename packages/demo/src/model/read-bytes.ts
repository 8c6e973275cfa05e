import { decodeText, readDelimited, readWav, readZip, RecordingError, sniffFile } from '@sternline/core';
import type { Recording } from '@sternline/core';
import type { NamedBytes, ReadChoices, ReadOutcome } from './analysis-types.js';
import { plainNote } from './plain-note.js';

/**
 * Reads the bytes of a text, a WAV file or a zip of sensors into a recording.
 *
 * @param file - name and content
 * @param choices - what the user told: rate, columns, units, file of a zip
 * @returns the recording, or what stands in the way and what to do
 */
export function readBytes(file: NamedBytes, choices: ReadChoices = {}): ReadOutcome {
  const name = file.name.replace(/\.[^.]{1,5}$/, '');
  const { reader, format, advice } = sniffFile(file.bytes);
  if (reader === 'none' || reader === 'media') {
    return { kind: 'stopped', code: reader, found: `${file.name} is ${format}.`, remedy: advice };
  }
  try {
    return { kind: 'read', recording: READERS[reader](file.bytes, { ...choices, name }) };
  } catch (error) {
    return stopped(error);
  }
}

type Reader = (bytes: Uint8Array, choices: ReadChoices & { readonly name: string }) => Recording;

const READERS: Readonly<Record<'readDelimited' | 'readWav' | 'readZip', Reader>> = {
  readDelimited: (bytes, choices) => readDelimited(decodeText(bytes), choices),
  readWav: (bytes, { name }) => readWav(bytes, { name }),
  readZip: (bytes, choices) => readZip(bytes, choices),
};

function stopped(error: unknown): ReadOutcome {
  if (error instanceof RecordingError) {
    const { code, found, remedy, place } = error;
    const where = place.line === undefined ? '' : `Line ${place.line}: `;
    return {
      kind: 'stopped',
      code,
      found: where ? where + found : capital(found),
      remedy: REMEDIES[code] ?? plainNote(remedy),
    };
  }
  const message = error instanceof Error ? error.message : String(error);
  return { kind: 'stopped', code: 'other', found: message, remedy: 'Check the values that you gave.' };
}

/** Where the page has a field for the answer, it says so in place of the option that the library would name. */
const REMEDIES: Partial<Record<string, string>> = {
  'needs-sample-rate': 'Put in how many samples a second were taken; the logger’s settings show it.',
  'needs-time-unit': 'Choose what the time column counts in.',
  'no-such-column': 'Put in columns that the file has.',
  'unknown-unit': 'Choose the unit of the axes.',
};

function capital(sentence: string): string {
  return sentence.charAt(0).toUpperCase() + sentence.slice(1);
}
