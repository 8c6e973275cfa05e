import { checkAngle } from './check-angle.js';
import { equivalentJoint } from './equivalent-joint.js';
import type { ShaftLine } from '../line/types.js';

/**
 * Instantaneous speed of the last shaft over that of the first, at given angles of the first shaft.
 *
 * One joint: ω₂/ω₁ = cos β / (1 − sin²β sin²θ). A chain turns as its {@link equivalentJoint}, exactly.
 *
 * @param line - a shaft line as `parseShaftLine` gives it
 * @param inputAngles - rad, any finite values, of the first shaft. At 0 the driving pin of the first universal joint
 *   is normal to the plane of the two axes it joins, so that one joint's ratio is cos β; where these axes are in line
 *   it lies horizontally to port
 * @returns the ratio at each angle, dimensionless; it repeats every half turn
 * @throws RangeError where an angle is not finite, or a universal joint stands at 90° or more
 * @remarks Joints without play and shafts stiff in twist. Rigid and flexible joints turn both sides alike.
 * @example
 * const held = [{ at: 0.01 }, { at: 0.09 }];
 * const shaft = { length: 0.1, outerDiameter: 0.005, material: 'stainless steel 304', supports: held };
 * const line = parseShaftLine({
 *   shafts: [shaft, { ...shaft, elevation: Math.PI / 6 }],
 *   joints: [{ kind: 'universal' }],
 * });
 * speedRatio(line, [0, Math.PI / 2]) // → [0.866025, 1.154701]
 * @see Robert L. Norton, "Design of Machinery", universal joints; the chain is derived at {@link equivalentJoint}
 */
export function speedRatio(line: ShaftLine, inputAngles: ArrayLike<number>): Float64Array {
  const { cosine, phase } = equivalentJoint(line);
  const ratios = new Float64Array(inputAngles.length);
  for (let i = 0; i < ratios.length; i++) {
    const pin = checkAngle('speedRatio', inputAngles, i) - phase;
    ratios[i] = cosine / (Math.cos(pin) ** 2 + (cosine * Math.sin(pin)) ** 2);
  }
  return ratios;
}
