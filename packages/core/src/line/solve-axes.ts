import type { Vector3 } from '../numerics/vector.js';
import type { Axis } from './geometry-types.js';
import { jointBend } from './joint-bend.js';
import { nearestPoints } from './nearest-points.js';
import { minus, norm, plus, times, unit } from './space.js';

/** Height or offset of an axis at its two stations; undefined where it was not measured. */
type View = readonly [number, number] | undefined;

/** The measures of one axis, in m, with the forward station first. */
export interface AxisFigures {
  readonly at: readonly [number, number];
  readonly height: View;
  readonly offset: View;
}

export interface LineFigures {
  readonly motor: AxisFigures;
  readonly tube: AxisFigures;
  /** Stations of the two joint centres; undefined where the axes are to meet at one joint. */
  readonly joints: readonly [number, number] | undefined;
}

/** A direction with its two angles, in rad, and a point, in m. */
export interface SolvedAxis extends Axis {
  readonly elevation: number;
  readonly plan: number;
}

export interface SolvedAxes {
  readonly motor: SolvedAxis;
  readonly tube: SolvedAxis;
  readonly meeting: { readonly gap: number; readonly centre?: Vector3 };
  readonly intermediate: (SolvedAxis & { readonly length: number }) | undefined;
  readonly centres: readonly Vector3[];
  /** rad */
  readonly angles: readonly number[];
}

/** Axes, joint centres and joint angles from exact measures. */
export function solveAxes(line: LineFigures): SolvedAxes {
  const [motor, tube] = placeAxes(line);
  const meeting = nearestPoints(motor, tube);
  if (!line.joints) {
    const centres = meeting.centre ? [meeting.centre] : [];
    const angles = [jointBend(motor, tube).angle];
    return { motor, tube, meeting, intermediate: undefined, centres, angles };
  }
  const centres = [pointAt(motor, line.joints[0]), pointAt(tube, line.joints[1])] as const;
  const between = minus(centres[1], centres[0]);
  const intermediate = { ...axisAlong(centres[0], between), length: norm(between) };
  const angles = [jointBend(motor, intermediate).angle, jointBend(intermediate, tube).angle];
  return { motor, tube, meeting, intermediate, centres, angles };
}

type Traces = readonly [Trace | undefined, Trace | undefined];

/** Height or offset as a straight line over the keel. */
interface Trace {
  readonly slope: number;
  readonly from: number;
  readonly at: number;
}

function placeAxes({ motor, tube, joints }: LineFigures): [SolvedAxis, SolvedAxis] {
  const heights = [traceOf(motor, 'height'), traceOf(tube, 'height')] as const;
  const offsets = [traceOf(motor, 'offset'), traceOf(tube, 'offset')] as const;
  const nearer = [tube.at[0], motor.at[1]] as const;
  const meet = (traces: Traces, other: Traces): [Trace, Trace] => {
    const crossing = joints ? undefined : crossingOf(other);
    return [
      traces[0] ?? levelAt(traces[1], crossing ?? nearer[0]),
      traces[1] ?? levelAt(traces[0], crossing ?? nearer[1]),
    ];
  };
  const [motorHeight, tubeHeight] = meet(heights, offsets);
  const [motorOffset, tubeOffset] = meet(offsets, heights);
  return [axisOf(motor.at[0], motorHeight, motorOffset), axisOf(tube.at[0], tubeHeight, tubeOffset)];
}

function traceOf(axis: AxisFigures, view: 'height' | 'offset'): Trace | undefined {
  const measured = axis[view];
  if (!measured) return undefined;
  const slope = (measured[1] - measured[0]) / (axis.at[1] - axis.at[0]);
  return { slope, from: measured[0], at: axis.at[0] };
}

function heightAt({ slope, from, at }: Trace, station: number): number {
  return from + slope * (station - at);
}

/** Where along the keel two traces cross; undefined where they run alongside or one was not measured. */
function crossingOf([first, second]: Traces): number | undefined {
  if (!first || !second || Math.abs(first.slope - second.slope) < 1e-12) return undefined;
  return first.at + (heightAt(second, first.at) - first.from) / (first.slope - second.slope);
}

/** In line with the keel, as high as the other trace is at a station; without one, on the keel itself. */
function levelAt(other: Trace | undefined, station: number): Trace {
  return { slope: 0, from: other ? heightAt(other, station) : 0, at: station };
}

function axisOf(at: number, height: Trace, offset: Trace): SolvedAxis {
  return axisAlong([at, heightAt(offset, at), heightAt(height, at)], [1, offset.slope, height.slope]);
}

function axisAlong(point: Vector3, along: Vector3): SolvedAxis {
  const [x, y, z] = along;
  return {
    point,
    direction: unit(along),
    elevation: Math.atan2(z, Math.hypot(x, y)),
    plan: Math.atan2(y, x),
  };
}

function pointAt({ point, direction }: Axis, station: number): Vector3 {
  return plus(point, times(direction, (station - point[0]) / direction[0]));
}
