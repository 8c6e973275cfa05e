import { decodeText, readDelimited, readWav, RecordingError } from '@sternline/core';
import type { NamedBytes, ReadChoices, ReadOutcome } from './analysis-types.js';
import { fileKind } from './file-kind.js';
import { plainNote } from './plain-note.js';

/**
 * Reads the bytes of a text or WAV file into a recording.
 *
 * @param file - name and content
 * @param choices - what the user told: rate, columns, units
 * @returns the recording, or what stands in the way and what to do
 */
export function readBytes(file: NamedBytes, choices: ReadChoices = {}): ReadOutcome {
  const name = file.name.replace(/\.[^.]{1,5}$/, '');
  try {
    const recording =
      fileKind(file.bytes) === 'wave'
        ? readWav(file.bytes, { name })
        : readDelimited(decodeText(file.bytes), { ...choices, name });
    return { kind: 'read', recording };
  } catch (error) {
    return stopped(error);
  }
}

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
