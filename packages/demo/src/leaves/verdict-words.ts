import type { Assessment, Verdict } from '@sternline/core';
import type { Units } from '../model/project.js';
import { say } from '../model/say.js';
import { formatFigure } from '../model/units.js';

/** What the verdict is called on the page, by the reason that weighs most. */
export function verdictName({ verdict, reasons }: Assessment): string {
  if (verdict === 'clear') return 'Clear';
  const [first] = reasons;
  if (first?.kind === 'above-first-whirl') return 'Above the first whirl';
  if (first?.kind === 'joint-angle-limit') return 'Joint beyond its angle';
  return verdict === 'inside' ? 'Inside a band' : 'Near a band';
}

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
