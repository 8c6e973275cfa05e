import { refusal } from '../internal/refuse.js';
import type { Recording } from '../recording/types.js';
import { levels } from '../spectrum/levels.js';
import { changeChances, effectChances } from './effect-chances.js';
import { LADDER_TESTS } from './ladder-tests.js';
import type { LadderAnswer, LadderStep, LadderTest } from './ladder-types.js';

/** What two runs of the same thing differ by. */
const REPEATABILITY = 0.15;

/** The chance of each outcome of a test's list, in its order. */
export function ladderOutcomes(answer: LadderAnswer): LadderStep['outcomes'] {
  const { outcomes, recordable } = LADDER_TESTS[answer.test];
  if ('outcome' in answer) {
    const known = outcomes.map(({ outcome }) => outcome);
    if (!known.includes(answer.outcome)) {
      throw refusal('answerLadder: outcome', `one of ${known.join(', ')}`, answer.outcome);
    }
    return outcomes.map(({ outcome }) => ({ outcome, chance: Number(outcome === answer.outcome) }));
  }
  if (!recordable)
    throw refusal('answerLadder: test', 'one that is run, to be read from recordings', answer.test);
  const ratio = shake(answer.after.recording) / shake(answer.before.recording);
  const span = Math.log(answer.after.speed / answer.before.speed);
  const chances = chancesOf(answer.test, { ratio, span });
  return outcomes.map(({ outcome }, i) => ({ outcome, chance: chances[i] ?? 0 }));
}

/** Root mean square of the channel that shakes most. */
function shake({ channels }: Recording): number {
  return Math.max(1e-12, ...channels.map(({ samples }) => levels(samples).rms));
}

function chancesOf(
  test: LadderTest,
  { ratio, span }: { readonly ratio: number; readonly span: number },
): readonly number[] {
  if (test === 'run-slower') return slopeChances(Math.log(ratio) / span, REPEATABILITY / Math.abs(span));
  const [gone = 0, third = 0, less = 0, stays = 0, grows = 0] = effectChances(ratio, REPEATABILITY);
  const goes = gone + third;
  if (test === 'propeller-off') return [goes, less, stays, grows];
  if (test === 'in-water') return [goes + less, stays, grows];
  if (test === 'drive-still') return [stays + grows, goes + less];
  if (test === 'press-panels' || test === 'joint-turned' || test === 'propeller-turned') {
    return changeChances(ratio, REPEATABILITY);
  }
  return [goes + less, stays + grows];
}

function slopeChances(slope: number, error: number): readonly number[] {
  const below = (edge: number): number => 1 / (1 + Math.exp((-1.702 * (edge - slope)) / error));
  return [1 - below(3), below(3) - below(1.5), below(1.5) - below(0.4), below(0.4)];
}
