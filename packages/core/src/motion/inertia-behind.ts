import type { ShaftLine } from '../line/types.js';
import { checkJoint } from './check-joint.js';
import { shaftInertias } from './shaft-inertias.js';
import type { Medium } from './types.js';

/**
 * Polar inertia of all that a joint drives: shafts, discs, further joints and half of the joint itself.
 *
 * @param line - a shaft line as `parseShaftLine` gives it
 * @param options - `joint`, its index; `medium`, `'water'` (default) with the water that the propeller carries, or `'air'`
 * @returns kg·m²
 * @throws RangeError where the line has no such joint
 * @remarks A joint's polar inertia is taken to be shared evenly by its two yokes. Without a `propeller` in the line
 *   nothing carries water; with one, its wet inertia factor counts, 1.25 where absent.
 * @example
 * inertiaBehind(exampleLine(), { joint: 0, medium: 'air' }) // → 4.782e-6
 * inertiaBehind(exampleLine(), { joint: 0 }) // → 5.882e-6
 */
export function inertiaBehind(
  line: ShaftLine,
  { joint, medium = 'water' }: { readonly joint: number; readonly medium?: Medium },
): number {
  checkJoint('inertiaBehind: joint', line, joint);
  return shaftInertias(line, medium)
    .slice(joint + 1)
    .reduce((sum, inertia) => sum + inertia, 0);
}
