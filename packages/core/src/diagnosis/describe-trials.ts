import { listText } from '../internal/list-text.js';
import { numberText } from '../internal/number-text.js';
import { CAUSE_BEHAVIOUR } from './cause-behaviour.js';
import { trialPairs } from './trial-pairs.js';
import type { Behaviour, FixedFrequency, LineTrial, OrderGrowth } from './trials-types.js';
import type { CauseCase } from './weigh-trials.js';

const WORDS: Readonly<Record<Behaviour['test'], string>> = {
  'propeller-off': 'With the propeller off',
  'joint-turned': 'With the joint turned by half a turn',
  'in-air': 'In air instead of water',
};

/** What the trials together say for or against a cause. */
export function describeTrials(
  { cause, growth, behaviours }: CauseCase,
  fixed: readonly FixedFrequency[],
): string[] {
  return [
    ...(growth === undefined ? [] : [growthSentence(growth, CAUSE_BEHAVIOUR[cause].growth[0])]),
    ...behaviours.map(
      ({ test, ratio, error }) =>
        `${WORDS[test]} it is ${numberText(ratio, 2)} times (± ${numberText(ratio * error, 1)}) what it was.`,
    ),
    ...(cause === 'structural-resonance' || cause === 'electrical'
      ? fixed.map(
          ({ frequency, trials }) =>
            `A line at ${numberText(frequency)} Hz stays there in trials ${listText(trials.map((i) => i + 1))}, whatever the speed.`,
        )
      : []),
  ];
}

function growthSentence({ order, slope, standardError, hump }: OrderGrowth, expected: number): string {
  const figure = `Order ${order} grows with the speed to the power ${numberText(slope, 2)} (± ${numberText(standardError, 1)}); ${numberText(expected, 2)} is expected of this cause.`;
  return hump
    ? `${figure} It stands higher at a speed in between than on either side: something rings there.`
    : figure;
}

/** What the trials together leave open. */
export function trialLimits(trials: readonly LineTrial[]): string[] {
  const speeds = trials
    .filter(({ conditions: { propeller } }) => propeller === trials[0]?.conditions.propeller)
    .map(({ speed }) => speed);
  const tests = new Set(trialPairs(trials).map(({ test }) => test));
  return [
    ...(Math.max(...speeds) < 1.08 * Math.min(...speeds)
      ? ['All trials ran at one speed: how the shake grows with speed, and what rings, is not known.']
      : []),
    ...(tests.has('propeller-off')
      ? []
      : ['No trial without the propeller at the same speed: what the propeller does is not known.']),
    ...(tests.has('joint-turned')
      ? []
      : [
          'No trial with the joint turned half a turn at the same speed: joint and shaft cannot be told apart.',
        ]),
  ];
}
