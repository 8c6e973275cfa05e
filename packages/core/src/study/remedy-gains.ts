import type { ShaftLine } from '../line/types.js';
import { permissibleUnbalance } from '../loads/permissible-unbalance.js';
import { bandClearance } from './band-clearance.js';
import type { Before, RemedyGains } from './remedy-types.js';
import type { Assessment, Verdict } from './types.js';

/** A line with what `assess` says of it. */
export interface Judged {
  readonly line: ShaftLine;
  readonly assessment: Assessment;
}

/** Worst last. */
export const BADNESS: Readonly<Record<Verdict, number>> = { clear: 0, near: 1, inside: 2 };

/** Points for one step of the verdict: it outweighs everything else that one change brings. Our choice. */
const STEP = 4;
/** Clearance that is worth one point, the margin of joints and blades; beyond twice that, more is worth nothing. */
const MARGIN = 0.15;
/** Below the fluctuation of one joint at 3° there is nothing to gain; makers of cardan shafts. */
const SMOOTH = 0.0027;
/** Points for each band that falls out of the throttle's reach. Our choice. */
const BAND = 0.5;
/** Points that the whole of the wanted speed is worth. Our choice. */
const SPEED = 8;
/** Grade of discs that give no unbalance, as in `lineLoads`. */
const USUAL = 16;

/** What a change brings, against the line as it is. */
export function remedyGains(before: Judged, after: Judged): RemedyGains {
  const pair = <T>(of: (one: Judged) => T): Before<T> => ({ before: of(before), after: of(after) });
  const speedLimit = pair(({ assessment }) => assessment.speedLimit.speed);
  const gain = speedLimit.after - speedLimit.before;
  const bands = pair(({ assessment }) => bandsInReach(assessment));
  const gains = {
    verdict: pair(({ assessment }) => assessment.verdict),
    speedLimit: { ...speedLimit, gain: Number.isNaN(gain) ? 0 : gain },
    clearance: pair(({ assessment }) => bandClearance(assessment.speed, assessment.avoidBands)),
    fluctuation: pair(({ assessment }) => assessment.fluctuation.degree),
    unbalanceForce: pair(unbalanceForce),
    ...(bands.before === undefined || bands.after === undefined
      ? {}
      : { bandsInReach: { before: bands.before, after: bands.after } }),
  };
  const lost = Math.abs(after.assessment.speed / before.assessment.speed - 1);
  return { ...gains, points: pointsOf(gains) - SPEED * lost };
}

function pointsOf(gains: Omit<RemedyGains, 'points'>): number {
  const { verdict, speedLimit, clearance, fluctuation, unbalanceForce: force, bandsInReach } = gains;
  const held = (value: number) => Math.max(-2 * MARGIN, Math.min(2 * MARGIN, value));
  const finite = Number.isFinite(speedLimit.before) && Number.isFinite(speedLimit.after);
  return (
    STEP * (BADNESS[verdict.before] - BADNESS[verdict.after]) +
    (finite ? Math.log2(speedLimit.after / speedLimit.before) : 0) +
    (held(clearance.after) - held(clearance.before)) / MARGIN +
    (fluctuation.before - fluctuation.after) / Math.max(fluctuation.before, fluctuation.after, SMOOTH) +
    shareLost(force) +
    (bandsInReach ? BAND * (bandsInReach.before - bandsInReach.after) : 0)
  );
}

/** Share of the larger of the two that a change takes away; negative for what it adds. */
function shareLost({ before, after }: Before<number>): number {
  const larger = Math.max(before, after);
  return larger > 0 ? (before - after) / larger : 0;
}

/** N, unbalance of all discs as if in one plane. */
function unbalanceForce({ line, assessment: { speed } }: Judged): number {
  const discs = line.shafts.flatMap((shaft) => shaft.discs);
  return discs.reduce(
    (sum, { mass, unbalance }) =>
      sum + (unbalance ?? permissibleUnbalance({ grade: USUAL, mass, speed })) * speed ** 2,
    0,
  );
}

function bandsInReach({ avoidBands, speed, drive }: Assessment): number | undefined {
  const full = drive?.fullThrottle?.speed;
  if (full === undefined) return undefined;
  return avoidBands.filter(({ from, to }) => to > speed && from <= full).length;
}
