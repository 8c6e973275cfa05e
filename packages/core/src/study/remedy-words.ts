import { joinStatements } from './join-statements.js';
import { newReasons } from './reason-subjects.js';
import { figure, makeStatement } from './statement.js';
import type { Before, RemedyGains } from './remedy-types.js';
import type { Assessment, Statement, Verdict } from './types.js';

const IN_WORDS: Readonly<Record<Verdict, string>> = {
  clear: 'clear',
  near: 'close to a band or a limit',
  inside: 'inside a band or beyond what a part bears',
};

/** What a remedy does, in figures. */
export function remedySummary(
  { before, after }: Before<Assessment>,
  { verdict, speedLimit }: RemedyGains,
): Statement {
  const figures = {
    speed: figure('speed', after.speed),
    before: figure('speed', speedLimit.before),
    after: figure('speed', speedLimit.after),
  };
  const fewer = troubles(before) > troubles(after) ? ', though by fewer reasons' : '';
  const how =
    verdict.before === verdict.after
      ? `as before, ${IN_WORDS[verdict.after]}${fewer}`
      : `${IN_WORDS[verdict.after]}, where it was ${IN_WORDS[verdict.before]}`;
  const limit =
    Math.abs(speedLimit.gain) < 0.005 * speedLimit.before || !Number.isFinite(speedLimit.after)
      ? 'its speed limit stays'
      : 'its speed limit goes from {before} to {after}';
  return makeStatement(`At {speed} the line is ${how}; ${limit}.`, figures);
}

/** How many reasons stand behind a verdict. */
function troubles({ verdict, reasons }: Assessment): number {
  return reasons.filter(({ severity }) => severity === verdict && verdict !== 'clear').length;
}

/** The band or limit that comes next above the speed, so that nobody is surprised by it. */
export function nextLimit(before: Assessment, after: Assessment): Statement {
  const uncovered = newReasons(before, after, 'near').find(({ kind }) => kind !== 'band');
  const next = nextBand(after);
  return uncovered ? joinStatements([uncovered, next], ' ') : next;
}

function nextBand({ speed, avoidBands, speedLimit, drive }: Assessment): Statement {
  const next = avoidBands.filter(({ from }) => from > speed).sort((a, b) => a.from - b.from)[0];
  const full = drive?.fullThrottle?.speed;
  if (!next) {
    const template =
      speed > speedLimit.speed
        ? 'It runs above its speed limit of {limit}, and no further band was looked for within reach.'
        : 'No band lies within reach above {speed}.';
    return makeStatement(template, {
      speed: figure('speed', speed),
      limit: figure('speed', speedLimit.speed),
    });
  }
  const figures = {
    speed: figure('speed', speed),
    from: figure('speed', next.from),
    to: figure('speed', next.to),
    ...(full === undefined ? {} : { full: figure('speed', full) }),
  };
  const reach =
    full === undefined
      ? ''
      : full < next.from
        ? ' Full throttle, {full}, does not reach it.'
        : ' Full throttle, {full}, reaches it.';
  return makeStatement(
    `Next above {speed} comes the band of the ${next.name}, {from} to {to}.${reach}`,
    figures,
  );
}
