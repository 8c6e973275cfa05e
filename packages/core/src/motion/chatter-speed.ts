import { checkNotNegative } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import type { ShaftLine } from '../line/types.js';
import { checkJoint } from './check-joint.js';
import { inertiaBehind } from './inertia-behind.js';
import { peakInertiaTorque } from './peak-inertia-torque.js';
import type { Chatter, Medium, TorqueLaw } from './types.js';

/**
 * The speed above which the pins of a joint change sides twice a turn and rattle.
 *
 * The load takes T = T₀ + c Ω²; the fluctuation forces g Ω² on what the joint drives, g = max(J α)/Ω². The torque
 * through the pins reverses where g Ω² > T₀ + c Ω², that is above Ω = √(T₀ / (g − c)). Friction alone (dry, c = 0) is
 * always overcome in the end; a propeller alone (T₀ = 0) grows with the same power of speed as the inertia torque, so
 * that the joint then rattles at every speed or at none.
 *
 * @param line - a shaft line as `parseShaftLine` gives it
 * @param options - `joint`, its index; `torque` that the load at the propeller end takes: `constant` in N·m,
 *   `coefficient` in N·m·s², each at least 0 and absent for none; `medium`, `'water'` (default) or `'air'`
 * @returns the speed in rad/s, what it means, and the inertia and inertia torque behind it
 * @throws RangeError where the line has no such joint, a torque is negative or not finite, both are absent, or a joint
 *   stands at 90° or more
 * @remarks A motor that turns evenly and shafts stiff in twist: a light rotor gives way, and rattling starts later.
 *   Play in the pins does not shift the start; it makes it louder. All of the load is taken to act on the last shaft.
 * @example
 * const dry = chatterSpeed(exampleLine(), { joint: 0, torque: { constant: 0.004 }, medium: 'air' });
 * dry.speed // → 117.7
 * chatterSpeed(exampleLine(), { joint: 0, torque: { coefficient: 4e-7 } }).chatters // → 'never'
 * @see derived from the balance of power behind the joint
 */
export function chatterSpeed(
  line: ShaftLine,
  options: { readonly joint: number; readonly torque: TorqueLaw; readonly medium?: Medium },
): Chatter {
  const { joint, torque, medium = 'water' } = options;
  checkJoint('chatterSpeed: joint', line, joint);
  const { constant = 0, coefficient = 0 } = checkLaw(torque);
  const inertiaTorque = peakInertiaTorque(line, { joint, at: line.shafts.length - 1, medium });
  const inertia = inertiaBehind(line, { joint, medium });
  const excess = inertiaTorque - coefficient;
  if (!(excess > 0)) return { chatters: 'never', speed: Infinity, inertia, inertiaTorque };
  const speed = Math.sqrt(constant / excess);
  return { chatters: constant === 0 ? 'always' : 'above', speed, inertia, inertiaTorque };
}

function checkLaw(torque: TorqueLaw): TorqueLaw {
  if (torque.constant === undefined && torque.coefficient === undefined)
    throw refusal('chatterSpeed: torque', 'given as a constant, a coefficient or both', undefined);
  checkNotNegative('chatterSpeed: torque.constant', torque.constant ?? 0);
  checkNotNegative('chatterSpeed: torque.coefficient', torque.coefficient ?? 0);
  return torque;
}
