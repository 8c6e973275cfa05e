import { estimateSpeed, noLoadSpeed } from '@sternline/core';
import type { Recording, ShaftLine } from '@sternline/core';
import type { SpeedSuggestion } from './analysis-types.js';

/** Turns of the shaft that a recording must hold before a speed is read from it. */
const TURNS = 10;
/** A suggestion less likely than this is not worth a button. */
const FAINTEST = 0.03;
/** rad/s, slower than any drive line is run. */
const SLOWEST = 2 * Math.PI * 2;

/**
 * Shaft speeds that the recording itself suggests.
 *
 * @param recording - as read, or a part of it
 * @param known - the wanted speed in rad/s, and the line
 * @returns most likely first; empty where nothing in it repeats
 */
export function suggestSpeeds(
  recording: Recording,
  known: { readonly wantedSpeed: number; readonly line?: ShaftLine },
): SpeedSuggestion[] {
  const { line } = known;
  const slowest = Math.max(SLOWEST, (2 * Math.PI * TURNS) / recording.sampling.duration);
  const fastest = Math.max((line && noLoadSpeed(line)) ?? 0, 1.3 * known.wantedSpeed, 2 * slowest);
  const estimate = estimateSpeed(recording, { range: [slowest, fastest], ...(line ? { line } : {}) });
  return estimate.candidates
    .filter(({ confidence }) => confidence >= FAINTEST)
    .map(({ speed, confidence }) => ({ speed, confidence }))
    .sort((a, b) => b.confidence - a.confidence);
}
