import { sliceRecording, type Recording } from '@sternline/core';
import type { Trial } from './project.js';

/** The stretch of a trial that is read: the part that was chosen, or all of it. */
export function seenRecording({ recording, part }: Trial): Recording {
  return part ? sliceRecording(recording, part) : recording;
}
