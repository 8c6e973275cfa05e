import { refusal } from '../internal/refuse.js';
import { checkMeasures } from './check-measures.js';
import type {
  Assumption,
  AxisMeasures,
  AxisStation,
  Estimate,
  LineAxes,
  Measure,
  MeasuredAxis,
} from './geometry-types.js';
import {
  solveAxes,
  type AxisFigures,
  type LineFigures,
  type SolvedAxes,
  type SolvedAxis,
} from './solve-axes.js';
import { spread } from './spread.js';

/**
 * Axes, joint centres and joint angles of a line from a ruler's measures at two stations of each axis.
 *
 * Slopes over the keel are (h₂ − h₁)/(x₂ − x₁) and (o₂ − o₁)/(x₂ − x₁), so that tan ψ is the slope in plan and tan ε that
 * of height over the length in plan; β = atan2(|u × v|, u · v). With one joint the centre lies where the axes meet; with
 * two, the intermediate shaft runs from one given centre to the other.
 *
 * @param measures - stations in m, each length with the most it may be off; heights above the keel line and offsets to
 *   port from the centre line. Either may be left out for an axis, at both its stations: that view is then taken as in
 *   line with the keel, and said so in `assumed`. With `joints` the line has two joints, without it one
 * @returns m and rad. Each derived figure has its likely reach `tolerance` (root of the sum of squares) and its bounds
 *   `least` and `greatest` (every measure anywhere within its tolerance)
 * @throws RangeError where a length is not finite, a tolerance is negative, a height or offset is given at one station
 *   only, two stations are not further apart than their tolerances together, or the joint centres are not in order
 * @remarks The bounds are found at the corners of the box of tolerances and along its edges. Where the axes are nearly
 *   parallel the place of their meeting is hardly known, and its tolerance says so. An axis with one view missing is
 *   placed to meet the other in that view, so that such a line shows no gap that was not measured.
 * @example
 * const mm = (value) => ({ value: value / 1000, tolerance: 0.0005 });
 * const axes = lineAxes({
 *   motor: [{ at: mm(0), height: mm(40) }, { at: mm(80), height: mm(40) }],
 *   tube: [{ at: mm(140), height: mm(30) }, { at: mm(440), height: mm(-45) }],
 * });
 * (axes.jointAngles[0].value * 180) / Math.PI // → 14.036
 * (axes.jointAngles[0].tolerance * 180) / Math.PI // → 0.52
 * axes.jointCentres[0][0] // → 0.100
 * axes.assumed[0].code // → 'offsets-missing'
 * @see joint angle from both views: https://manualslib.fr/manual/109398/Vetus-Vdr-2-10-25.html?page=12
 */
export function lineAxes(measures: AxisMeasures): LineAxes {
  checkMeasures(measures);
  const slots = slotsOf(measures);
  const box = {
    values: slots.map(({ value }) => value),
    tolerances: slots.map(({ tolerance }) => tolerance),
  };
  const solved = solveAxes(readSlots(measures, box.values));
  const estimates = spread((values) => figuresOf(solveAxes(readSlots(measures, values))), box);
  return { ...withEstimates(solved, estimates), assumed: assumptions(measures) };
}

function inOrder(stations: readonly [AxisStation, AxisStation]): readonly [AxisStation, AxisStation] {
  const [first, second] = stations;
  return first.at.value <= second.at.value ? stations : [second, first];
}

/** All measures in a fixed order, so that their values can be replaced. */
function slotsOf({ motor, tube, joints }: AxisMeasures): Measure[] {
  const stations = [...inOrder(motor), ...inOrder(tube)];
  const heights = stations.flatMap(({ height }) => height ?? []);
  const offsets = stations.flatMap(({ offset }) => offset ?? []);
  return [
    ...heights,
    ...offsets,
    ...stations.map(({ at }) => at),
    ...(joints ? [joints.motor, joints.tube] : []),
  ];
}

function readSlots({ motor, tube, joints }: AxisMeasures, values: readonly number[]): LineFigures {
  let next = 0;
  const pair = (): [number, number] => [values[next++] ?? NaN, values[next++] ?? NaN];
  const pairIf = (given: Measure | undefined) => (given ? pair() : undefined);
  const motorHeight = pairIf(motor[0].height);
  const tubeHeight = pairIf(tube[0].height);
  const motorOffset = pairIf(motor[0].offset);
  const tubeOffset = pairIf(tube[0].offset);
  const motorFigures: AxisFigures = { at: pair(), height: motorHeight, offset: motorOffset };
  const tubeFigures: AxisFigures = { at: pair(), height: tubeHeight, offset: tubeOffset };
  return { motor: motorFigures, tube: tubeFigures, joints: joints ? pair() : undefined };
}

/** Every figure that is told with a tolerance; {@link withEstimates} reads them in the same order. */
function figuresOf({ motor, tube, meeting, intermediate, angles }: SolvedAxes): number[] {
  const directions = [motor, tube].flatMap(({ elevation, plan }) => [elevation, plan]);
  if (intermediate) {
    const { elevation, plan, length } = intermediate;
    return [...directions, ...angles, elevation, plan, length];
  }
  return [...directions, ...angles, meeting.gap, ...(meeting.centre ? [meeting.centre[0]] : [])];
}

function withEstimates(
  { motor, tube, meeting, intermediate, centres, angles }: SolvedAxes,
  estimates: readonly Estimate[],
): Omit<LineAxes, 'assumed'> {
  let next = 0;
  const take = (): Estimate => {
    const estimate = estimates[next++];
    if (!estimate) throw refusal('lineAxes: measures', 'complete', undefined);
    return estimate;
  };
  const measured = ({ point, direction }: SolvedAxis): MeasuredAxis => {
    const elevation = take();
    return { point, direction, elevation, plan: take() };
  };
  const ends = { motor: measured(motor), tube: measured(tube) };
  const shared = { ...ends, jointCentres: centres, jointAngles: angles.map(() => take()) };
  if (intermediate) return { ...shared, intermediate: { ...measured(intermediate), length: take() } };
  const gap = take();
  const { centre } = meeting;
  return { ...shared, meeting: centre ? { centre, at: take(), gap } : { gap } };
}

const VIEWS = [
  { view: 'height', code: 'heights', name: 'heights', lies: 'level', sight: 'side view' },
  {
    view: 'offset',
    code: 'offsets',
    name: 'offsets',
    lies: 'parallel to the centre line',
    sight: 'plan view',
  },
] as const;

function assumptions({ motor, tube }: AxisMeasures): Assumption[] {
  return VIEWS.flatMap(({ view, code, name, lies, sight }): Assumption[] => {
    const [hasMotor, hasTube] = [motor[0][view] !== undefined, tube[0][view] !== undefined];
    if (hasMotor && hasTube) return [];
    if (!hasMotor && !hasTube) {
      const sentence = `No ${name} were given: both axes are taken as ${lies}, in line with the keel.`;
      return [{ code: `${code}-missing`, sentence }];
    }
    const [lacking, other] = hasTube ? (['motor', 'tube'] as const) : (['tube', 'motor'] as const);
    const sentence = `No ${name} of the ${lacking}’s axis were given: it is taken as ${lies}, and as meeting the ${other}’s axis in the ${sight}.`;
    return [{ code: `${lacking}-${code}-missing`, sentence }];
  });
}
