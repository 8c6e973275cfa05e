import { speedFrequencyMap, tapTest } from '@sternline/core';
import type { Recording, ShaftLine } from '@sternline/core';
import type { TapOutcome } from './tap-words.js';

/** Bending frequencies worth a word. */
const MODES = 3;

/**
 * Reads a recording of taps, and what is predicted for the line that was tapped.
 *
 * @param recording - the drive still, taps a second or so apart
 * @param line - where it is known
 */
export function readTaps(recording: Recording, line: ShaftLine | undefined): TapOutcome {
  try {
    return { kind: 'rang', tap: tapTest(recording), predicted: line ? bendingAtRest(line) : [] };
  } catch (error) {
    if (error instanceof RangeError) return { kind: 'silent' };
    throw error;
  }
}

/** Hz; upward and sideways bending are one at rest. */
function bendingAtRest(line: ShaftLine): number[] {
  const { forward } = speedFrequencyMap(line, { speeds: [0], modes: MODES });
  return forward.map(([frequency = 0]) => frequency / (2 * Math.PI));
}
