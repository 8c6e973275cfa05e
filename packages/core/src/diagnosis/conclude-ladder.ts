import { numberText } from '../internal/number-text.js';
import { LADDER_FIXES } from './ladder-fixes.js';
import { LADDER_TESTS } from './ladder-tests.js';
import type { LadderConclusion, LadderState, LadderStep } from './ladder-types.js';
import type { Cause } from './types.js';

/** Chance at which one cause is said to stand out, and its odds over the next; our choice. */
const ENOUGH = 0.8;
const OVER_NEXT = 6;

/** The conclusion that a search allows, if one cause stands out. */
export function concludeLadder({ causes, steps }: LadderState): LadderConclusion | undefined {
  const [first, second] = causes;
  if (first === undefined || first.chance < ENOUGH || first.chance < OVER_NEXT * (second?.chance ?? 0)) {
    return undefined;
  }
  return {
    ...first,
    reasons: steps.map((step) => reason(step, first.cause)),
    fixes: LADDER_FIXES[first.cause],
  };
}

function reason({ test, outcomes }: LadderStep, cause: Cause): string {
  const rung = LADDER_TESTS[test];
  const [best] = outcomes
    .map(({ outcome, chance }, i) => ({ outcome, chance, i }))
    .sort((a, b) => b.chance - a.chance);
  const { outcome, means } = rung.outcomes[best?.i ?? 0] ?? { outcome: '', means: '' };
  const expected = numberText(100 * (rung.likelihood(cause)[best?.i ?? 0] ?? 0), 2);
  return `${rung.instruction} Seen: ${outcome}. ${means} This cause shows that in ${expected} % of cases.`;
}
