import { answerLadder } from './answer-ladder.js';
import { ladderPriors } from './ladder-priors.js';
import type { LadderStart, LadderState, LadderTest } from './ladder-types.js';

/**
 * Begins a guided search for why a line shakes.
 *
 * @param start - `findings` of `diagnose` or `diagnoseTrials` if there are any, the `line` if known, and what was `done` before
 * @returns plain data: the chance of each cause, likeliest first; go on with `nextTrial` and `answerLadder`
 * @throws RangeError for a trial that was done twice or an outcome that it cannot have
 * @remarks The chances are those of one main cause. Without findings they are what is common in small lines, by judgement.
 * @example
 * const ladder = startLadder({ line: exampleLine() });
 * ladder.causes[0].cause // → 'unbalance'
 * ladder.steps // → []
 */
export function startLadder(start: LadderStart = {}): LadderState {
  const { findings = [], line, done = [] } = start;
  const ruledOut: LadderTest[] = [
    ...(line?.joints.length === 0
      ? (['joint-turned', 'motor-and-joint', 'motor-alone', 'align-with-sleeve', 'halve-angle'] as const)
      : []),
    ...(line !== undefined && line.propeller === undefined
      ? (['propeller-off', 'propeller-turned', 'other-propeller', 'in-water'] as const)
      : []),
    ...(line !== undefined && line.joints.length > 0 && line.joints.every(({ kind }) => kind !== 'universal')
      ? (['halve-angle'] as const)
      : []),
  ];
  const state: LadderState = { causes: ladderPriors(findings, line), steps: [], ruledOut };
  return done.reduce((so, answer) => answerLadder(so, answer), state);
}
