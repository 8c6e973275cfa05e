import { axisMark, exitEllipse, type Axis, type AxisMark, type ExitEllipse } from '@sternline/core';
import type { DrillingPlan, HullStation } from './measures.js';

/** Where to mark and drill one thing that the tube goes through. */
export interface DrillingMark {
  readonly kind: 'bulkhead' | 'hull';
  readonly mark: AxisMark;
  /** The hole, where the tube's diameter is known. */
  readonly hole?: ExitEllipse;
}

/**
 * Marks for every bulkhead and for the hull, from the axis of the tube.
 *
 * @param axis - of the tube, as measured or planned
 * @param plan - what it goes through; what is incomplete is left out
 */
export function drillingMarks(axis: Axis, plan: DrillingPlan): DrillingMark[] {
  const bulkheads = plan.bulkheads.map((at) => upright(axis, at, plan.tubeDiameter));
  const hull = plan.hull ? hullMark(axis, plan.hull, plan.tubeDiameter) : undefined;
  return hull ? [...bulkheads, hull] : bulkheads;
}

function upright(axis: Axis, at: number, diameter: number | undefined): DrillingMark {
  const surface = { through: [at, 0, 0], normal: [1, 0, 0] } as const;
  const hole = diameter === undefined ? {} : { hole: exitEllipse(axis, { diameter, surface }) };
  return { kind: 'bulkhead', mark: axisMark(axis, surface), ...hole };
}

// The height is read straight above or below the axis, so the flat goes through the axis's own offset there.
function hullMark(axis: Axis, hull: HullStation, diameter: number | undefined): DrillingMark | undefined {
  const { at, height, riseAft = 0, riseToPort = 0 } = hull;
  if (at === undefined || height === undefined) return undefined;
  const { offset } = axisMark(axis, { through: [at, 0, 0], normal: [1, 0, 0] });
  const surface = { through: [at, offset, height], riseAft, riseToPort } as const;
  try {
    const hole = diameter === undefined ? {} : { hole: exitEllipse(axis, { diameter, surface }) };
    return { kind: 'hull', mark: axisMark(axis, surface), ...hole };
  } catch {
    // An axis along the bottom never comes out of it.
    return undefined;
  }
}
