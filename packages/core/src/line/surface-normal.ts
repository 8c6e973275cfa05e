import { refusal } from '../internal/refuse.js';
import type { Vector3 } from '../numerics/vector.js';
import type { Surface } from './geometry-types.js';
import { norm, unit } from './space.js';

/** The unit normal of a surface; from its slopes it is (−tan of the rise aft, −tan of the rise to port, 1). */
export function surfaceNormal(where: string, surface: Surface): Vector3 {
  if ('normal' in surface) {
    const length = norm(surface.normal);
    if (!(length > 0 && Number.isFinite(length)))
      throw refusal(`${where}.normal`, 'three finite numbers, not all zero', surface.normal);
    return unit(surface.normal);
  }
  for (const name of ['riseAft', 'riseToPort'] as const) {
    if (!(Math.abs(surface[name]) < Math.PI / 2))
      throw refusal(`${where}.${name}`, 'an angle in rad between −π/2 and π/2', surface[name]);
  }
  return unit([-Math.tan(surface.riseAft), -Math.tan(surface.riseToPort), 1]);
}
