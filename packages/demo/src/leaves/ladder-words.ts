import type { CauseChance, LadderOutcome, LadderStep, LadderTrial } from '@sternline/core';
import { causeWords, confidenceWords } from '../model/finding-words.js';

const OUTCOMES: Readonly<Record<LadderOutcome, string>> = {
  goes: 'The shake goes',
  'grows less': 'It grows less',
  stays: 'It stays',
  grows: 'It grows',
  'falls faster': 'It falls much faster than the speed squared',
  'falls with the square': 'It falls about as the speed squared',
  'falls slower': 'It falls slower than that',
  changes: 'It changes clearly',
  found: 'Yes, found',
  'not found': 'No, nothing found',
};

/** An outcome as the user presses it. */
export function outcomeWords(outcome: LadderOutcome): string {
  return OUTCOMES[outcome];
}

const TITLES: Readonly<Record<LadderTrial['test'], string>> = {
  'tighten-screws': 'Tighten everything',
  'run-slower': 'Run slower',
  'drive-still': 'Listen with the drive still',
  'press-panels': 'Press the panels',
  'propeller-off': 'Take the propeller off',
  'joint-turned': 'Turn the joint on its shaft',
  'motor-alone': 'Run the motor alone',
  'motor-and-joint': 'Run motor and joint',
  'in-water': 'Run it in water',
  'roll-shaft': 'Roll the shaft',
  'turn-by-hand': 'Turn it by hand',
  'align-with-sleeve': 'Align with a sleeve',
  'propeller-turned': 'Turn the propeller on the shaft',
  'halve-angle': 'Halve the joint’s angle',
  'other-propeller': 'Fit another propeller',
};

/** The name of a rung. */
export function testTitle(test: LadderTrial['test']): string {
  return TITLES[test];
}

/** The likeliest causes so far, in one sentence. */
export function causesSentence(causes: readonly CauseChance[]): string {
  const told = causes.filter(({ chance }) => chance >= 0.05).slice(0, 3);
  const list = told.map(({ cause, chance }) => `${lower(causeWords(cause))} (${percent(chance)})`);
  return `So far: ${list.join('; ')}.`;
}

/** The cause that stands out. */
export function conclusionSentence({ cause, chance }: CauseChance): string {
  return `${causeWords(cause)}: ${confidenceWords(chance)} (${percent(chance)}).`;
}

/** What a rung takes. */
export function takesSentence({ takes }: LadderTrial): string {
  const tools = takes.tools.length > 0 ? `, with ${takes.tools.join(', ')}` : '';
  return `About ${takes.minutes} ${takes.minutes === 1 ? 'minute' : 'minutes'}${tools}.`;
}

/** A rung that was done, and what came of it. */
export function stepWords({ test, outcomes, from }: LadderStep): string {
  const [best] = [...outcomes].sort((a, b) => b.chance - a.chance);
  if (!best) return testTitle(test);
  const read = from === 'recordings' ? `, as the recordings say (${percent(best.chance)})` : '';
  return `${testTitle(test)}: ${lower(outcomeWords(best.outcome))}${read}.`;
}

/** What a search would say with an outcome: how likely it is, and which cause would then lead. */
export function chanceWords({ chance, causes }: LadderTrial['outcomes'][number]): string {
  const [first] = causes;
  const then = first ? ` Then most likely: ${lower(causeWords(first.cause))}.` : '';
  return `Expected in ${percent(chance)} of such lines.${then}`;
}

function percent(chance: number): string {
  return `${Math.round(100 * chance)} %`;
}

function lower(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}
