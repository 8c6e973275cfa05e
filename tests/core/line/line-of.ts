import { parseShaftLine, type JointKind, type ShaftLine } from '@sternline/core';

export interface Turn {
  readonly elevation?: number;
  readonly plan?: number;
  readonly yokeTwist?: number;
}

export const DEGREE = Math.PI / 180;

/** A line of plain 5 mm shafts in these directions, each in two bushes; joints universal unless said otherwise. */
export function lineOf(turns: readonly Turn[], kinds?: readonly JointKind[]): ShaftLine {
  return parseShaftLine({
    shafts: turns.map((turn) => ({
      length: 0.1,
      outerDiameter: 0.005,
      material: 'carbon steel',
      supports: [{ at: 0.02 }, { at: 0.08 }],
      ...turn,
    })),
    joints: turns.slice(1).map((_, index) => ({ kind: kinds?.[index] ?? 'universal' })),
  });
}

/** Elevation and plan angle of a direction given by its components. */
export function towards(x: number, y: number, z: number): Turn {
  return { elevation: Math.atan2(z, Math.hypot(x, y)), plan: Math.atan2(y, x) };
}
