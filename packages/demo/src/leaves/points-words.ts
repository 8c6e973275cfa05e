import { jointAngles, type Estimate, type LineAxes, type ShaftLine } from '@sternline/core';
import type { PointsOutcome } from '../model/measured-axes.js';
import type { PointKey } from '../model/measures.js';
import type { Units } from '../model/project.js';
import { formatFigure, type ScreenQuantity } from '../model/units.js';

/** What a point is called, and where to measure it. */
export function pointWords(key: PointKey): { readonly label: string; readonly hint: string } {
  if (key === 'joint-1-at' || key === 'joint-2-at') {
    const which = key === 'joint-1-at' ? 'first' : 'second';
    return {
      label: `Centre of the ${which} joint, aft of the datum`,
      hint: 'To the middle of its cross, along the keel.',
    };
  }
  const [axis = '', station = '', view = ''] = key.split('-');
  const place = PLACES[`${axis}-${station}`] ?? '';
  const views: Readonly<Record<string, { label: string; hint: string }>> = {
    at: { label: `${station}: aft of the datum`, hint: `Along the keel to the square held ${place}.` },
    height: {
      label: `${station}: height above the keel line`,
      hint: 'Up the square to the middle of the shaft; half its diameter below its top.',
    },
    offset: {
      label: `${station}: off the centre line`,
      hint: 'From a thread along the centre line; to port is positive.',
    },
  };
  return views[view] ?? { label: key, hint: '' };
}

const PLACES: Readonly<Record<string, string>> = {
  'motor-1': 'at the motor’s far end, or at the front of a straight rod in its place',
  'motor-2': 'where the motor’s shaft ends',
  'tube-1': 'at the tube’s front end',
  'tube-2': 'at the tube’s aft end, or on a rod pushed through it',
};

/** What the measured points come to, in a sentence or two. */
export function pointsSentence(outcome: PointsOutcome, line: ShaftLine, units: Units): string {
  switch (outcome.kind) {
    case 'missing':
      return missingSentence(outcome.missing);
    case 'problem':
      return outcome.sentence;
    case 'axes':
      return axesSentence(outcome.axes, line, units);
  }
}

/** Everything was left out: the section then says what it is for. */
const ALL_PLACES = 4;

function missingSentence(missing: readonly PointKey[]): string {
  if (missing.filter((key) => key.endsWith('at')).length >= ALL_PLACES) {
    return 'Measure two points on the motor’s axis and two on the tube’s, and the angle at each joint follows, with how far the ruler may be off. Points from a plan serve as well.';
  }
  const names = missing.slice(0, 3).map((key) => {
    const axis = key.startsWith('motor') ? 'motor, ' : key.startsWith('tube') ? 'tube, ' : '';
    return `${axis}${pointWords(key).label}`;
  });
  const more = missing.length > 3 ? `, and ${missing.length - 3} more` : '';
  return `Still to be measured: ${names.join('; ')}${more}.`;
}

function axesSentence(
  { jointAngles: measured, meeting, intermediate }: LineAxes,
  line: ShaftLine,
  units: Units,
): string {
  const entered = bendingAngles(line);
  const angles = measured.map((angle) => within(angle, 'angle', units)).join(' and ');
  const [only] = measured;
  const bounds =
    measured.length === 1 && only
      ? ` At worst it is between ${formatFigure(only.least, 'angle', units)} and ${formatFigure(only.greatest, 'angle', units)}.`
      : '';
  const joints = measured.length === 1 ? 'the joint' : 'the joints';
  const drawn = entered.map((angle) => formatFigure(angle, 'angle', units)).join(' and ');
  const opening = `By these points ${joints} ${measured.length === 1 ? 'stands' : 'stand'} at ${angles}; the line as drawn has ${drawn}.${bounds}`;
  if (intermediate) {
    return `${opening} Between the joint centres lie ${within(intermediate.length, 'length', units)}.`;
  }
  return meeting ? `${opening} ${gapSentence(meeting.gap, units)}` : opening;
}

function gapSentence(gap: Estimate, units: Units): string {
  if (gap.least <= 0 || gap.value <= gap.tolerance) {
    return 'As far as the ruler can tell, the two axes meet, as one joint wants.';
  }
  return `The two axes pass each other ${within(gap, 'length', units)} apart, where one joint wants them to meet.`;
}

/** Angles of the joints that may bend, from the motor end. */
function bendingAngles(line: ShaftLine): number[] {
  return jointAngles(line).filter((_, index) => line.joints[index]?.kind !== 'rigid');
}

/** A figure with its tolerance, both to the tolerance's digits. */
export function within({ value, tolerance }: Estimate, quantity: ScreenQuantity, units: Units): string {
  if (quantity === 'angle') {
    const least = Math.max(tolerance, 0.05 * (Math.PI / 180));
    return `${formatFigure(value, quantity, units)} ± ${formatFigure(least, quantity, units)}`;
  }
  return `${formatFigure(value, quantity, units)} ± ${formatFigure(Number(tolerance.toPrecision(1)), quantity, units)}`;
}
