import { concludeLadder } from './conclude-ladder.js';
import { normalised } from './ladder-priors.js';
import { LADDER_TESTS } from './ladder-tests.js';
import type {
  CauseChance,
  LadderMeaning,
  LadderState,
  LadderTest,
  LadderTrial,
  NextTrial,
} from './ladder-types.js';

/** Bits below which a trial is not worth its while. */
const LEAST_GAIN = 0.02;
/** Minutes that any trial costs, to set up and to start. */
const SETTING_UP = 4;

/**
 * Which trial next: the one that narrows the causes down most for its work.
 *
 * gain = H(causes) − Σ P(outcome) H(causes | outcome), in bits; ranked by gain / (minutes + 4)
 *
 * @param state - of `startLadder` or `answerLadder`
 * @returns the `trial` to do, with what it takes, what each outcome would mean and safety words; the `others`; and a
 *   `conclusion` with its reasons and fixes once one cause holds 80 % and stands six to one over the next
 * @remarks Looks one trial ahead. Likelihoods and minutes are those of a table of judgement, see `LADDER_TESTS`.
 * @example
 * const { trial } = nextTrial(startLadder({ line: exampleLine() }));
 * trial.outcomes.length > 1 // → true
 * trial.caution.length > 0 // → true
 * @see David MacKay, "Information Theory, Inference, and Learning Algorithms", Cambridge 2003, §4.1 (the weighing problem)
 */
export function nextTrial(state: LadderState): NextTrial {
  const done = new Set([...state.steps.map(({ test }) => test), ...state.ruledOut]);
  const trials = (Object.keys(LADDER_TESTS) as LadderTest[])
    .filter((test) => !done.has(test))
    .map((test) => trialOf(test, state.causes))
    .filter(({ gain }) => gain > LEAST_GAIN)
    .sort((a, b) => worth(b) - worth(a));
  const [trial, ...others] = trials;
  const conclusion = concludeLadder(state);
  return {
    ...(trial === undefined ? {} : { trial }),
    others,
    ...(conclusion === undefined ? {} : { conclusion }),
  };
}

function worth({ gain, takes }: LadderTrial): number {
  return gain / (takes.minutes + SETTING_UP);
}

function trialOf(test: LadderTest, causes: readonly CauseChance[]): LadderTrial {
  const { instruction, minutes, tools, caution, recordable, outcomes, likelihood } = LADDER_TESTS[test];
  const meanings = outcomes.map(({ outcome, means }, i): LadderMeaning => {
    const joint = causes.map(({ cause, chance }) => ({
      cause,
      chance: chance * (likelihood(cause)[i] ?? 0),
    }));
    const chance = joint.reduce((sum, one) => sum + one.chance, 0);
    return { outcome, means, chance, causes: chance > 0 ? normalised(joint) : [] };
  });
  const left = meanings.reduce((sum, { chance, causes: after }) => sum + chance * entropy(after), 0);
  return {
    test,
    instruction,
    takes: { minutes, tools },
    outcomes: meanings.map((one) => ({ ...one, causes: one.causes.slice(0, 3) })),
    gain: entropy(causes) - left,
    caution,
    recordable,
  };
}

function entropy(causes: readonly CauseChance[]): number {
  return causes.reduce((sum, { chance }) => (chance > 0 ? sum - chance * Math.log2(chance) : sum), 0);
}
