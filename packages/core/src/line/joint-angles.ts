import { jointBend } from './joint-bend.js';
import { refusal } from '../internal/refuse.js';
import type { ShaftLine } from './types.js';

/**
 * Operating angle of each joint: the angle between the axes it ties.
 *
 * β = atan2(|u × v|, u · v)
 *
 * @param line - a shaft line as `parseShaftLine` gives it
 * @returns rad, 0 to π, one for each joint, from the motor end
 * @throws RangeError where the line has not one shaft more than it has joints
 * @remarks Exact in space and at angles of any size: one of 1e-6 rad keeps all its digits.
 * @example
 * const degree = Math.PI / 180;
 * const shaft = { length: 0.3, outerDiameter: 0.005, material: 'stainless steel 304' };
 * const line = parseShaftLine({
 *   name: 'Marram, port',
 *   shafts: [
 *     { ...shaft, name: 'motor', elevation: 0, supports: [{ at: 0 }, { at: 0.05 }] },
 *     { ...shaft, name: 'propeller', elevation: -10 * degree, plan: 10 * degree, supports: [{ at: 0.02 }, { at: 0.28 }] },
 *   ],
 *   joints: [{ kind: 'universal' }],
 * });
 * jointAngles(line).map((angle) => angle / degree) // → [14.1060]
 */
export function jointAngles(line: ShaftLine): number[] {
  return line.joints.map((_, index) => {
    const from = line.shafts[index];
    const to = line.shafts[index + 1];
    if (!from || !to)
      throw refusal('jointAngles: line.shafts', 'one more than the joints', line.shafts.length);
    return jointBend(from, to).angle;
  });
}
