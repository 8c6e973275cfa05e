import { checkPositive } from '../internal/checks.js';
import type { ShaftLine } from '../line/types.js';
import { checkJoint } from './check-joint.js';
import { peakInertiaTorque } from './peak-inertia-torque.js';
import type { Medium } from './types.js';

/**
 * Peak torque just behind a joint that only speeds up and slows down what the joint drives: J α, twice a turn.
 *
 * With several shafts behind, each with its own swing, the torque is Ω² Σ J r r′ / r₁, from the power Σ J ω α that goes
 * into them; r is the ratio of each shaft's speed to the input speed, r′ its slope over the input angle, and r₁ belongs
 * to the shaft just behind the joint.
 *
 * @param line - a shaft line as `parseShaftLine` gives it
 * @param options - `joint`, its index; `speed` of the first shaft in rad/s, greater than 0; `medium`, `'water'`
 *   (default) or `'air'`
 * @returns N·m, of the swing that works against the drive
 * @throws RangeError where the line has no such joint, the speed is not greater than 0, or a joint stands at 90° or more
 * @remarks A motor that turns evenly and shafts stiff in twist: a light rotor gives way, and the real torque is lower.
 * @example
 * inertiaTorque(exampleLine(), { joint: 0, speed: 345, medium: 'air' }) // → 0.0344
 * @see R. S. Khurmi and J. K. Gupta, "Theory of Machines", Hooke's joint, J α of a flywheel; from memory
 */
export function inertiaTorque(
  line: ShaftLine,
  options: { readonly joint: number; readonly speed: number; readonly medium?: Medium },
): number {
  const { joint, speed, medium = 'water' } = options;
  checkJoint('inertiaTorque: joint', line, joint);
  checkPositive('inertiaTorque: speed', speed);
  return peakInertiaTorque(line, { joint, at: joint + 1, medium }) * speed ** 2;
}
