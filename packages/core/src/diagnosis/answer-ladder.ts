import { refusal } from '../internal/refuse.js';
import { ladderOutcomes } from './ladder-outcomes.js';
import { normalised } from './ladder-priors.js';
import { LADDER_TESTS } from './ladder-tests.js';
import type { LadderAnswer, LadderState } from './ladder-types.js';

/**
 * Takes the outcome of one trial into a guided search.
 *
 * P(c | o) ∝ P(c) Σ P(outcome | c) P(outcome | what was seen)
 *
 * @param state - of `startLadder` or of an earlier answer; left as it is
 * @param answer - the `test` with its `outcome` as seen, or with recordings `before` and `after` to read it from
 * @returns the new state
 * @throws RangeError for an unknown test, one that was done, an outcome that it cannot have, or recordings of a test
 *   that is not run
 * @example
 * const ladder = answerLadder(startLadder(), { test: 'propeller-off', outcome: 'goes' });
 * ladder.causes[0].cause // → 'unbalance'
 * ladder.steps.length // → 1
 */
export function answerLadder(state: LadderState, answer: LadderAnswer): LadderState {
  const { test } = answer;
  if (!(test in LADDER_TESTS)) {
    throw refusal('answerLadder: test', Object.keys(LADDER_TESTS).join(', '), test);
  }
  if (state.steps.some((step) => step.test === test)) {
    throw refusal('answerLadder: test', 'one that was not done yet', test);
  }
  const rung = LADDER_TESTS[test];
  const outcomes = ladderOutcomes(answer);
  const causes = normalised(
    state.causes.map(({ cause, chance }) => {
      const likelihood = rung.likelihood(cause);
      const seen = outcomes.reduce((sum, one, i) => sum + one.chance * (likelihood[i] ?? 0), 0);
      return { cause, chance: chance * seen };
    }),
  );
  const from = 'outcome' in answer ? ('entered' as const) : ('recordings' as const);
  return { ...state, causes, steps: [...state.steps, { test, outcomes, from }] };
}
