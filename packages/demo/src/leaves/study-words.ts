import type { Assessment } from '@sternline/core';
import type { ClearanceStudy, LineStudy } from '../model/line-study.js';
import type { Units } from '../model/project.js';
import { formatFigure } from '../model/units.js';

/** Share of a speed below which the estimate is no better than free bushes. */
const NO_HOLD = 0.005;

/** How far the bushes move the first whirl, in a sentence. */
export function boundsSentence(
  { bounds }: LineStudy,
  { speed, criticalSpeeds }: Assessment,
  units: Units,
): string {
  const [first] = bounds;
  if (!first) return 'No whirl of the first order was found.';
  const write = (value: number) => formatFigure(value, 'speed', units);
  const { lower, upper, estimate } = first;
  const likely =
    estimate < lower * (1 + NO_HOLD)
      ? 'as entered they let it tilt, and a length and a bore for each would tell more'
      : `${write(estimate)} is likely for bushes of the length and fit entered`;
  const opening = `How firmly the bushes hold is the largest unknown: the first whirl lies between ${write(lower)}, if they let the shaft tilt, and ${write(upper)}, if they hold its direction; ${likely}.`;
  const wanted = write(speed);
  if (speed > upper) return `${opening} The wanted ${wanted} lies above all of it.`;
  if (speed >= lower) {
    return `${opening} The wanted ${wanted} lies within it: a tap on the shaft at rest, recorded, would tell which.`;
  }
  const oftener = criticalSpeeds.some(({ order }) => order > 1)
    ? '; what joints and blades set off earlier moves in the same proportion'
    : '';
  return `${opening} The wanted ${wanted} lies below all of it${oftener}.`;
}

const TIMES: Readonly<Record<number, string>> = { 1: 'once', 2: 'twice' };

/** What the map shows, in a sentence. */
export function mapSentence({ criticalSpeeds }: Assessment, units: Units): string {
  const inReach = [...criticalSpeeds].sort((a, b) => a.speed - b.speed)[0];
  if (!inReach) return 'Nothing on this map drives the line sideways.';
  return `Where a thin line, what pushes, meets a thick one, how the shaft likes to swing, the line whirls. The first meeting is at ${formatFigure(inReach.speed, 'speed', units)}, pushed ${TIMES[inReach.order] ?? `${inReach.order} times`} a turn.`;
}

/** Whether and where the shaft touches its tube, in a sentence. */
export function clearanceSentence(
  study: ClearanceStudy | undefined,
  { speed, top }: { speed: number; top: number },
  units: Units,
): string {
  if (!study)
    return 'Enter the bore of the stern tube, at the propeller shaft, to see whether the whirl touches it.';
  if (!study.driven) {
    return 'Nothing entered makes the shaft swing: enter the unbalance of the propeller, or the run-out of the shaft.';
  }
  const write = (value: number) => formatFigure(value, 'speed', units);
  const { contact, speeds, tubes } = study;
  const at = speeds.findIndex((value) => value >= speed);
  const most = Math.max(...tubes.map(({ radius }) => radius[Math.max(0, at)] ?? 0));
  const room = Math.min(...tubes.map(({ clearance }) => clearance));
  const now = `At ${write(speed)} it swings ${formatFigure(Number(most.toPrecision(2)), 'length', units)} sideways, of ${formatFigure(room, 'length', units)} that the tube leaves`;
  if (!Number.isFinite(contact)) return `${now}; it does not touch up to ${write(top)}.`;
  if (contact <= speed) return `${now}; it touches first at ${write(contact)}, below the wanted speed.`;
  return `${now}; it touches first at ${write(contact)}.`;
}
