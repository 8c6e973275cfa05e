import type { ShaftLine } from '../line/types.js';
import { bendMap, rotateMap, stillMap, type DiscMap } from './disc-map.js';
import { pinTurns } from './pin-turns.js';
import type { EquivalentJoint } from './types.js';

/**
 * The single universal joint that turns its output just as a whole chain of joints does.
 *
 * A joint at β carries the angle a of its driving pin from the normal of its plane into b, tan b = cos β tan a. With
 * z = exp 2ia that is the Möbius map (z + k)/(1 + kz), k = tan²(β/2), of the unit disc onto itself; a yoke twist and
 * the turn from one joint plane to the next are rotations of the disc. Such maps form a group, so that any chain in
 * space, with any twists, is once more one joint: of angle βₑ, its driving pin `phase` away. Exact, at any angles.
 *
 * @param line - a shaft line as `parseShaftLine` gives it
 * @returns `angle` in rad, `cosine` of it to full relative precision near 90°, and `phase`: the input angle in rad,
 *   modulo half a turn, at which the whole line turns slowest, as a lone joint does at 0
 * @throws RangeError where a universal joint stands at 90° or more
 * @remarks Input angle 0: the driving pin of the first universal joint is normal to the plane of the two axes it
 *   joins; where these are in line, it lies horizontally to port, along (−sin ψ, cos ψ, 0). A rigid or flexible joint
 *   turns both sides alike and carries the pin over about the normal of its plane, without turning it about the shaft.
 *   Yoke twists before the first universal joint have no bearing. Shafts and joints are taken as stiff in twist.
 * @example
 * const degree = Math.PI / 180;
 * const shaft = { length: 0.1, outerDiameter: 0.005, material: 'stainless steel 304' };
 * const held = [{ at: 0.01 }, { at: 0.09 }];
 * const line = parseShaftLine({
 *   shafts: [
 *     { ...shaft, supports: held },
 *     { ...shaft, elevation: 10 * degree },
 *     { ...shaft, elevation: 18 * degree, supports: held },
 *   ],
 *   joints: [{ kind: 'universal' }, { kind: 'universal' }],
 * });
 * equivalentJoint(line).angle / degree // → 6.0196
 * @see derived here; for equal planes it is cos βₑ = cos β₁ / cos β₂, and at small angles the sum of βᵢ² as phasors
 *   of twice their phase, as joint makers' guides have it
 */
export function equivalentJoint(line: ShaftLine): EquivalentJoint {
  const map = stillMap();
  for (const { joint, angle, turn } of pinTurns(line, 'equivalentJoint')) {
    rotateMap(map, turn);
    bendMap(map, angle, `equivalentJoint: angle of joints[${joint}]`);
  }
  return read(map);
}

function read({ aRe, aIm, bRe, bIm, determinant }: DiscMap): EquivalentJoint {
  const a = Math.hypot(aRe, aIm);
  const b = Math.hypot(bRe, bIm);
  return {
    angle: 2 * Math.atan2(Math.sqrt(b), Math.sqrt(a)),
    cosine: determinant / (a + b) ** 2,
    phase: Math.atan2(bIm * aRe - bRe * aIm, bRe * aRe + bIm * aIm) / 2,
  };
}
