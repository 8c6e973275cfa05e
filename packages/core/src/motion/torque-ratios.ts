import { jointAngles } from '../line/joint-angles.js';
import type { ShaftLine } from '../line/types.js';
import { shaftJoints } from './shaft-joints.js';
import type { TorqueRatio } from './types.js';

/**
 * How far the torque behind each joint swings within a turn, over the torque before it and over that of the motor.
 *
 * No power is lost or stored: T₂/T₁ = ω₁/ω₂, from cos β to 1/cos β for one joint; and over the motor's torque from
 * cos βₑ to 1/cos βₑ, with βₑ the angle of the equivalent joint of the chain so far.
 *
 * @param line - a shaft line as `parseShaftLine` gives it
 * @returns one row for each joint from the motor end; 1 throughout for a rigid or flexible joint by itself
 * @throws RangeError where a universal joint stands at 90° or more
 * @remarks Massless joints without friction and steady torque of the motor; inertia behind a joint adds its own swing,
 *   see {@link inertiaTorque}.
 * @example
 * const held = [{ at: 0.01 }, { at: 0.09 }];
 * const shaft = { length: 0.1, outerDiameter: 0.005, material: 'stainless steel 304', supports: held };
 * const line = parseShaftLine({
 *   shafts: [shaft, { ...shaft, elevation: Math.PI / 18 }],
 *   joints: [{ kind: 'universal' }],
 * });
 * torqueRatios(line)[0].greatest // → 1.01543
 * torqueRatios(line)[0].least // → 0.98481
 * @see output torque between M cos β and M/cos β: http://www.elbe-group.de/technik/elbe_techan2_e.htm
 */
export function torqueRatios(line: ShaftLine): TorqueRatio[] {
  const chain = shaftJoints(line);
  return jointAngles(line).map((angle, joint) => {
    const own = line.joints[joint]?.kind === 'universal' ? Math.cos(angle) : 1;
    const whole = chain[joint + 1]?.cosine ?? 1;
    return {
      joint,
      least: own,
      greatest: 1 / own,
      leastOfMotor: whole,
      greatestOfMotor: 1 / whole,
    };
  });
}
