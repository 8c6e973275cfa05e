import { refusal } from '../internal/refuse.js';
import type { Vector3 } from '../numerics/vector.js';
import type { Shaft } from './types.js';

/**
 * Unit vector along a shaft, from its motor end to its propeller end.
 *
 * (cos ε cos ψ, cos ε sin ψ, sin ε), with ε the elevation and ψ the plan angle.
 *
 * @param shaft - `elevation` in rad, positive up; `plan` in rad, positive to port
 * @returns x aft along the keel, y to port, z up
 * @throws RangeError where an angle is not a finite number
 * @example
 * shaftDirection({ elevation: 0, plan: 0 }) // → [1, 0, 0]
 * shaftDirection({ elevation: 0, plan: Math.PI / 6 }) // → [0.866025, 0.500000, 0.000000]
 */
export function shaftDirection({ elevation, plan }: Pick<Shaft, 'elevation' | 'plan'>): Vector3 {
  if (!Number.isFinite(elevation))
    throw refusal('shaftDirection: elevation', 'a finite angle in rad', elevation);
  if (!Number.isFinite(plan)) throw refusal('shaftDirection: plan', 'a finite angle in rad', plan);
  return [Math.cos(elevation) * Math.cos(plan), Math.cos(elevation) * Math.sin(plan), Math.sin(elevation)];
}
