import { decodeText, readDelimited, readWav, RecordingError } from '@sternline/core';
import type { NamedBytes, ReadChoices, ReadOutcome } from './analysis-types.js';
import { fileKind } from './file-kind.js';

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
    return { kind: 'stopped', code, found: where + found, remedy };
  }
  const message = error instanceof Error ? error.message : String(error);
  return { kind: 'stopped', code: 'other', found: message, remedy: 'Check the values that you gave.' };
}
