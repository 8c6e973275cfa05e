import { refusal } from '../internal/refuse.js';
import { jointBend } from '../line/joint-bend.js';
import type { ShaftLine } from '../line/types.js';
import type { EquivalentJoint } from './types.js';

/** rad; below this two axes are one, and the plane that they span is rounding. */
const STRAIGHT = 1e-12;

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
  const map: DiscMap = { aRe: 1, aIm: 0, bRe: 0, bIm: 0, determinant: 1 };
  let pin: number | undefined;
  line.joints.forEach((joint, index) => {
    const from = line.shafts[index];
    const to = line.shafts[index + 1];
    if (!from || !to)
      throw refusal('equivalentJoint: line.shafts', 'one more than the joints', line.shafts.length);
    const bend = jointBend(from, to);
    if (joint.kind === 'universal') {
      if (pin !== undefined) rotate(map, pin - bend.normalBefore);
      else if (bend.angle <= STRAIGHT) rotate(map, -bend.normalBefore);
      bendBy(map, bend.angle, index);
      pin = bend.normalAfter + Math.PI / 2 + to.yokeTwist;
    } else if (pin !== undefined) {
      pin += bend.normalAfter - bend.normalBefore + to.yokeTwist;
    }
  });
  return read(map);
}

/** z → (Az + B)/(B̄z + Ā), and |A|² − |B|² kept as a product, since the difference would lose it near 90°. */
interface DiscMap {
  aRe: number;
  aIm: number;
  bRe: number;
  bIm: number;
  determinant: number;
}

/** Follows the map by z → z exp 2iφ. */
function rotate(map: DiscMap, angle: number): void {
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  const { aRe, aIm, bRe, bIm } = map;
  map.aRe = cos * aRe - sin * aIm;
  map.aIm = cos * aIm + sin * aRe;
  map.bRe = cos * bRe - sin * bIm;
  map.bIm = cos * bIm + sin * bRe;
}

/** Follows the map by one joint, in the form [cos²(β/2), sin²(β/2)] whose determinant is cos β. */
function bendBy(map: DiscMap, angle: number, index: number): void {
  const cosine = Math.cos(angle);
  if (!(cosine > 0))
    throw refusal(`equivalentJoint: angle of joints[${index}]`, 'below π/2 rad (90°)', angle);
  const q = Math.sin(angle / 2) ** 2;
  const p = 1 - q;
  const { aRe, aIm, bRe, bIm } = map;
  map.aRe = p * aRe + q * bRe;
  map.aIm = p * aIm - q * bIm;
  map.bRe = p * bRe + q * aRe;
  map.bIm = p * bIm - q * aIm;
  map.determinant *= cosine;
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
