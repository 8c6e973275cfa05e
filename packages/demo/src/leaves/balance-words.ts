import { BALANCE_SAFETY, type Verification } from '@sternline/core';
import type { BalanceBook, BalanceRun } from '../model/advice.js';
import type { BalanceResult, BalanceWalk } from '../model/balance-walk.js';
import type { Units } from '../model/project.js';
import { formatFigure } from '../model/units.js';

/** What the walk comes to so far, in a sentence or two. */
export function balanceSentence(walk: BalanceWalk, book: BalanceBook, units: Units): string {
  if (walk.problem) return `These readings give no correction. ${walk.problem}`;
  if (walk.verification) return verificationSentence(walk.verification);
  if (walk.result) return correctionSentence(walk.result, book, units);
  if (walk.next === 'mass') {
    return 'Four short runs and no phase reference find the heavy side: once as it is, then with a small trial mass at three places.';
  }
  return `Next: ${NEXT[walk.next]}.`;
}

const NEXT: Readonly<Record<BalanceRun | 'mass' | 'done', string>> = {
  mass: 'weigh a trial mass',
  found: 'run it as it is and read the first order',
  first: 'the first run with the trial mass',
  second: 'the second run with the trial mass',
  third: 'the third run with the trial mass',
  check: 'fit the correction and run once more',
  done: 'nothing',
};

/** How much goes where, and what is left then. */
export function correctionSentence(
  { balance }: BalanceResult,
  { by, runs, unit }: BalanceBook,
  units: Units,
): string {
  const { mass, angle, massError, angleError, expectedAmplitude } = balance;
  const opposite = by === 'removing' ? (angle + Math.PI) % (2 * Math.PI) : angle;
  const how = by === 'removing' ? 'Take off' : 'Put on';
  const found = runs.found?.amplitude ?? 0;
  const rest =
    expectedAmplitude < LEAST_DOUBT * found
      ? 'next to nothing'
      : `about ${writeAmplitude(expectedAmplitude, unit)}`;
  const left = `The first order should fall from ${writeAmplitude(found, unit)} to ${rest}.`;
  return `${how} ${withError(mass, massError, { quantity: 'mass', units })} at ${withError(opposite, angleError, { quantity: 'angle', units })} clockwise from blade 1. ${left}`;
}

/** rad, and share of a mass, below which a doubt is not worth a word. */
const LEAST_DOUBT = 0.002;

function withError(
  value: number,
  error: number,
  { quantity, units }: { quantity: 'mass' | 'angle'; units: Units },
): string {
  const shown = formatFigure(value, quantity, units);
  const doubt = formatFigure(Number(error.toPrecision(2)), quantity, units);
  const least = quantity === 'angle' ? LEAST_DOUBT : LEAST_DOUBT * value;
  return error > least ? `${shown} ± ${doubt}` : shown;
}

/** The correction laid on blades, or why that is not all of it. */
export function splitSentence(
  { split }: BalanceResult,
  { by }: BalanceBook,
  { blades, units }: { blades: number; units: Units },
): string {
  const parts = split.parts.map(
    ({ mass, position }) =>
      `${formatFigure(mass, 'mass', units)} ${by === 'removing' ? 'off' : 'on'} blade ${position + 1}`,
  );
  const list = parts.join(' and ');
  const left =
    split.left.mass > 1e-9
      ? ` ${formatFigure(split.left.mass, 'mass', units)} stays undone, as no blade lies beside it.`
      : '';
  return `On the ${blades} blades, at the same distance from the middle, that is ${list}.${left}`;
}

/** How large the trial mass should be, and whether the one at hand is. */
export function trialMassSentence(
  { advised, speed, pull }: BalanceWalk,
  mass: number | undefined,
  units: Units,
): string {
  const advice = `A mass of about ${formatFigure(advised.mass, 'mass', units)} will do: at ${formatFigure(speed, 'speed', units)} it pulls with ${formatFigure(advised.force, 'force', units)}, a tenth of the weight that turns.`;
  if (mass === undefined || pull === undefined) return advice;
  const times = mass / advised.mass;
  if (times > TOO_HEAVY) {
    return `${advice} Yours is ${times < 10 ? times.toFixed(1) : Math.round(times)} times that and pulls with ${formatFigure(pull, 'force', units)}: make sure of what holds it, or take less.`;
  }
  return `${advice} Yours pulls with ${formatFigure(pull, 'force', units)}.`;
}

/** Why a speed is no good to balance at; empty where it is. */
export function bandSentence({ band, speed }: BalanceWalk, units: Units): string {
  if (!band) return '';
  return `${formatFigure(speed, 'speed', units)} lies in a band to avoid, the ${band.name}, from ${formatFigure(band.from, 'speed', units)} to ${formatFigure(band.to, 'speed', units)}: there the first order does not follow the unbalance alone. Take another speed.`;
}

/** Times the advised mass from which its pull is worth a word. */
const TOO_HEAVY = 3;

/** How the run with the correction on came out. */
export function verificationSentence({ sentence }: Verification): string {
  return sentence;
}

/** What must be minded when a mass is put on or moved: how it is held, who stands where, the battery. */
export function massSafety(): readonly string[] {
  return BALANCE_SAFETY.slice(1, 4);
}

/** A place on the propeller, in whole degrees where it is one. */
export function placeWords(angle: number): string {
  return `${Number(((angle * 180) / Math.PI).toFixed(1))}°`;
}

/** An amplitude to three digits with its unit, where it has one. */
export function writeAmplitude(amplitude: number, unit = ''): string {
  const text = amplitude === 0 ? '0' : String(Number(amplitude.toPrecision(3)));
  if (unit === '') return text;
  return unit === 'full scale' ? `${text} of full scale` : `${text}\u00a0${unit}`;
}
