import type { Recording } from '@sternline/core';
import type { Trial } from './project.js';

/**
 * A trial of a line around a recording that was just read.
 *
 * @param recording - as read
 * @param taken - the line it was taken on, and what the device granted where the page itself recorded it
 * @returns a trial under an id of its own, its speed still to be told
 */
export function trialFromRecording(
  recording: Recording,
  { lineId, granted }: Pick<Trial, 'lineId' | 'granted'>,
): Trial {
  const told = granted ? { granted } : {};
  return { id: newId(), name: recording.name, lineId, note: '', simulated: false, ...told, recording };
}

/** Not randomUUID: a page served without TLS on a home network has none. */
function newId(): string {
  return [...crypto.getRandomValues(new Uint32Array(4))].map((word) => word.toString(36)).join('');
}
