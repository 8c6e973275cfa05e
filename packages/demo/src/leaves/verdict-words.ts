import type { Assessment, Verdict } from '@sternline/core';
import type { Units } from '../model/project.js';
import { say } from '../model/say.js';
import { formatFigure } from '../model/units.js';

/** What each verdict is called on the page. */
export const VERDICT_NAMES: Readonly<Record<Verdict, string>> = {
  clear: 'Clear',
  near: 'Near a band',
  inside: 'Inside a band',
};

/** A shape for each verdict, so that none rests on colour. */
export const VERDICT_SIGNS: Readonly<Record<Verdict | 'note', string>> = {
  clear: '○',
  near: '◐',
  inside: '●',
  note: '–',
};

/**
 * The verdict in one breath: what it is at the wanted speed, and how fast the line may turn.
 *
 * @param assessment - of the line at the wanted speed
 * @param units - metric or inch
 */
export function verdictSentence(assessment: Assessment, units: Units): string {
  const first = assessment.reasons.find(({ severity }) => severity === assessment.verdict);
  const opening = first
    ? say(first, units)
    : `At ${formatFigure(assessment.speed, 'speed', units)} nothing speaks against it.`;
  return `${opening} ${say(assessment.speedLimit, units)}`;
}
