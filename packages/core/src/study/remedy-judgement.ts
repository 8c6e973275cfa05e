import { makeStatement, figure } from './statement.js';
import { joinStatements } from './join-statements.js';
import { newReasons, weakened } from './reason-subjects.js';
import { BADNESS } from './remedy-gains.js';
import type { RemedyGains } from './remedy-types.js';
import type { Assessment, Statement } from './types.js';

/** What counts as a gain where the verdict is clear already; our choice. */
const LIMIT = 0.05;
const CLEARANCE = 0.05;
const SHARE = 0.25;
const SMOOTH = 0.0027;

interface Task {
  readonly before: Assessment;
  readonly after: Assessment;
  readonly gains: RemedyGains;
}

/** Why a change does not help; undefined where it does. */
export function whyNot(task: Task): Statement | undefined {
  return unsafe(task) ?? (BADNESS[task.before.verdict] > 0 ? notEnough(task) : nothingGained(task));
}

/** Whatever it gains, it must not leave a part or a speed worse off. */
function unsafe({ before, after }: Task): Statement | undefined {
  const [added] = newReasons(before, after, 'inside');
  if (added) return followedBy('It brings a new trouble.', added);
  const weaker = weakened(before, after);
  if (weaker) return followedBy('It weakens a part that is too weak already.', weaker);
  if (BADNESS[after.verdict] <= BADNESS[before.verdict]) return undefined;
  const worst = newReasons(before, after, after.verdict)[0] ?? after.reasons[0];
  return worst ? followedBy('It makes things worse.', worst) : undefined;
}

/** A better verdict, or one trouble fewer and none new. */
function notEnough({ before, after, gains }: Task): Statement | undefined {
  if (BADNESS[after.verdict] < BADNESS[before.verdict]) return undefined;
  const { verdict } = before;
  const count = ({ reasons }: Assessment) => reasons.filter(({ severity }) => severity === verdict).length;
  const added = newReasons(before, after, verdict);
  if (added.length === 0 && count(after) < count(before) && gains.points > 0) return undefined;
  const left = added[0] ?? after.reasons.find(({ severity }) => severity === verdict);
  return left && followedBy(partialGain(gains), left);
}

/** What it does gain, before what it leaves. */
function partialGain({ speedLimit, fluctuation, unbalanceForce }: RemedyGains): Statement | string {
  const share = speedLimit.after / speedLimit.before - 1;
  if (share >= LIMIT)
    return makeStatement('It raises the speed limit by {share}, but not at this speed.', {
      share: figure('share', share),
    });
  if (fluctuation.after < (1 - SHARE) * fluctuation.before) {
    const figures = {
      before: figure('share', fluctuation.before),
      after: figure('share', fluctuation.after),
    };
    return makeStatement(
      'It brings the swing of the speed from {before} to {after}, but leaves the trouble.',
      figures,
    );
  }
  if (unbalanceForce.after < (1 - SHARE) * unbalanceForce.before) {
    const figures = {
      before: figure('force', unbalanceForce.before),
      after: figure('force', unbalanceForce.after),
    };
    return makeStatement(
      'It brings the unbalance from {before} to {after}, but leaves the trouble.',
      figures,
    );
  }
  return 'It does not take the trouble away.';
}

function nothingGained({ gains }: Task): Statement | undefined {
  const { speedLimit, clearance, fluctuation, unbalanceForce, bandsInReach, points } = gains;
  const gained =
    speedLimit.after >= (1 + LIMIT) * speedLimit.before ||
    clearance.after >= clearance.before + CLEARANCE ||
    (fluctuation.before > SMOOTH && fluctuation.after < (1 - SHARE) * fluctuation.before) ||
    unbalanceForce.after < (1 - SHARE) * unbalanceForce.before ||
    (bandsInReach !== undefined && bandsInReach.after < bandsInReach.before);
  if (gained && points > 0) return undefined;
  const figures = { before: figure('speed', speedLimit.before), after: figure('speed', speedLimit.after) };
  const template = gained
    ? 'The line is clear already, and this loses more than it gains: the speed limit goes from {before} to {after}.'
    : 'The line is clear already, and this gains nothing to speak of: the speed limit goes from {before} to {after}.';
  return makeStatement(template, figures);
}

function followedBy(start: Statement | string, reason: Statement): Statement {
  const opening = typeof start === 'string' ? makeStatement(start, {}) : start;
  return joinStatements([opening, reason], ' ');
}
