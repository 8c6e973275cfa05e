import type { Alignment } from '@sternline/core';
import type { AlignmentOutcome } from './analysis-desk.js';
import type { Trial } from './project.js';
import type { RecordingPart } from './recording-part.js';
import { shortFigure } from './short-figure.js';

/**
 * How two recordings lie to one another, or why that cannot be told, in a sentence or two.
 *
 * @param outcome - of setting them on one clock
 * @param names - of the two, as the page shows them
 */
export function alignmentSentence(
  outcome: AlignmentOutcome,
  names: { readonly trial: string; readonly other: string },
): string {
  if (outcome.kind === 'apart') return APART[outcome.code];
  const { offset, offsetError, from, marks, drift } = outcome.alignment;
  const later = offset >= 0 ? 'after' : 'before';
  const by =
    from === 'marks'
      ? `${marks === 1 ? 'one tap' : `${marks} taps`} that both heard`
      : 'the course of their levels';
  const clocks =
    drift === 0 ? '' : ` Their clocks part by ${Math.abs(Math.round(1e6 * drift))} parts in a million.`;
  return `“${names.other}” began ${shortFigure(Math.abs(offset))} s ${later} “${names.trial}” (± ${shortFigure(offsetError, 1)} s), by ${by}.${clocks}`;
}

const APART = {
  unlike:
    'Nothing in one answers to the other: no tap and no change of level is in both. Are they of the same run?',
  ambiguous:
    'Several ways of laying them fit equally well. Tap the hull three times at uneven pauses at the start of each recording, and it can be told.',
} as const;

/**
 * A stretch of the first recording on the clock of the second.
 *
 * @param part - s, on the first
 * @param alignment - of the second to the first
 * @param other - the trial of the second recording
 * @returns as much of it as the second recording holds; undefined where it holds none
 */
export function partOnOther(
  part: RecordingPart,
  { offset, drift }: Pick<Alignment, 'offset' | 'drift'>,
  other: Trial,
): RecordingPart | undefined {
  const onOther = (time: number) => (time - offset) / (1 + drift);
  const from = Math.max(0, onOther(part.from));
  const to = Math.min(other.recording.sampling.duration, onOther(part.to));
  return to > from ? { from, to } : undefined;
}
