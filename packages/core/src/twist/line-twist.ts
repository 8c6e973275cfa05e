import { checkFinite } from '../internal/checks.js';
import type { ShaftLine } from '../line/types.js';
import { polarSecondMoment } from './polar-second-moment.js';
import type { LineTwist } from './types.js';

/**
 * How far a line winds up under a steady torque, and the shear stress of each shaft.
 *
 * φ = T L / GJ of each shaft, T / k of each joint
 *
 * @param line - a checked line
 * @param options - `torque` in N·m, of either sign
 * @returns angles in rad with the sign of the torque, stiffness in N·m/rad, shear stress in Pa
 * @throws RangeError where the torque is not finite
 * @remarks One torque throughout: what bushes and seals take by friction is left out, and so is the change of mean torque
 *   over a joint, which is none. A joint without a `torsionalStiffness` is rigid in twist.
 * @example
 * lineTwist(exampleLine(), { torque: 0.2 }).shafts[1].angle // → 0.01594
 * @see Budynas and Nisbett, "Shigley's Mechanical Engineering Design", 9th ed., §3-12
 */
export function lineTwist(line: ShaftLine, { torque }: { readonly torque: number }): LineTwist {
  checkFinite('lineTwist: torque', torque);
  const shafts = line.shafts.map((shaft) => {
    const moment = polarSecondMoment(shaft);
    const stiffness = (shaft.material.shearModulus * moment) / shaft.length;
    const shear = (Math.abs(torque) * shaft.outerDiameter) / (2 * moment);
    return { angle: torque / stiffness, stiffness, shear };
  });
  const joints = line.joints.map(({ torsionalStiffness }) =>
    torsionalStiffness === undefined ? 0 : torque / torsionalStiffness,
  );
  const total = [...shafts.map(({ angle }) => angle), ...joints].reduce((sum, angle) => sum + angle, 0);
  return { total, shafts, joints };
}
