import { checkPositive } from '../internal/checks.js';
import { jointAngles } from '../line/joint-angles.js';
import type { ShaftLine } from '../line/types.js';
import { PLAIN_PIN_LIMIT } from './plain-pin-limit.js';
import type { SpeedAngle } from './types.js';

/**
 * Speed times angle of every universal joint, against what plain pins stand: Ω β ≤ 15 000 rpm × degrees.
 *
 * @param line - a shaft line as `parseShaftLine` gives it
 * @param options - `speed` in rad/s, greater than 0
 * @returns product and limit in rad²/s, and their ratio, one row for each universal joint from the motor end
 * @throws RangeError where the speed is not greater than 0
 * @remarks Advice of makers of small joints with plain pins, for wear and rattle; joints with needle rollers stand more.
 * @example
 * const [joint] = speedAngles(exampleLine(), { speed: 345 });
 * joint.share // → 3.075
 */
export function speedAngles(line: ShaftLine, { speed }: { readonly speed: number }): SpeedAngle[] {
  checkPositive('speedAngles: speed', speed);
  return jointAngles(line).flatMap((angle, joint) => {
    if (line.joints[joint]?.kind !== 'universal') return [];
    const product = speed * angle;
    return [{ joint, product, limit: PLAIN_PIN_LIMIT, share: product / PLAIN_PIN_LIMIT }];
  });
}
