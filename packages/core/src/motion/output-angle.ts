import { checkAngle } from './check-angle.js';
import { equivalentJoint } from './equivalent-joint.js';
import type { ShaftLine } from '../line/types.js';

/**
 * Angle that the last shaft has turned since input angle 0, at given angles of the first shaft.
 *
 * One joint: tan θ₂ = cos β tan θ₁, followed without a jump through any number of turns. A chain turns as its
 * {@link equivalentJoint}, exactly.
 *
 * @param line - a shaft line as `parseShaftLine` gives it
 * @param inputAngles - rad, any finite values, counted as in {@link speedRatio}
 * @returns rad; 0 at 0, and half a turn for half a turn
 * @throws RangeError where an angle is not finite, or a universal joint stands at 90° or more
 * @remarks Joints without play and shafts stiff in twist. Its derivative is {@link speedRatio}.
 * @example
 * const held = [{ at: 0.01 }, { at: 0.09 }];
 * const shaft = { length: 0.1, outerDiameter: 0.005, material: 'stainless steel 304', supports: held };
 * const line = parseShaftLine({
 *   shafts: [shaft, { ...shaft, elevation: Math.PI / 6 }],
 *   joints: [{ kind: 'universal' }],
 * });
 * outputAngle(line, [Math.PI / 4, Math.PI, 2 * Math.PI]) // → [0.713724, 3.141593, 6.283185]
 */
export function outputAngle(line: ShaftLine, inputAngles: ArrayLike<number>): Float64Array {
  const { angle, cosine, phase } = equivalentJoint(line);
  const shortfall = 2 * Math.sin(angle / 2) ** 2;
  const lead = (pin: number): number => {
    const cos = Math.cos(pin);
    const sin = Math.sin(pin);
    return -Math.atan2(shortfall * sin * cos, cos * cos + cosine * sin * sin);
  };
  const start = lead(-phase);
  return Float64Array.from({ length: inputAngles.length }, (_, i) => {
    const input = checkAngle('outputAngle', inputAngles, i);
    return input + (lead(input - phase) - start);
  });
}
