import { refusal } from '../internal/refuse.js';

/*
 * Maps of the unit disc onto itself, z → (Az + B)/(B̄z + Ā), with z = exp 2ia and a the angle of a pin: what joints and
 * the turns between them do to the pin. |A|² − |B|² is kept as a product, since the difference would lose it near 90°.
 */
export interface DiscMap {
  aRe: number;
  aIm: number;
  bRe: number;
  bIm: number;
  determinant: number;
}

/** The map that leaves every pin where it is. */
export function stillMap(): DiscMap {
  return { aRe: 1, aIm: 0, bRe: 0, bIm: 0, determinant: 1 };
}

/** Follows the map by z → z exp 2iφ. */
export function rotateMap(map: DiscMap, angle: number): void {
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  const { aRe, aIm, bRe, bIm } = map;
  map.aRe = cos * aRe - sin * aIm;
  map.aIm = cos * aIm + sin * aRe;
  map.bRe = cos * bRe - sin * bIm;
  map.bIm = cos * bIm + sin * bRe;
}

/**
 * Follows the map by one joint, in the form [cos²(β/2), sin²(β/2)] whose determinant is cos β.
 *
 * @param where - `'function: argument'`, for the refusal of 90° or more
 */
export function bendMap(map: DiscMap, angle: number, where: string): void {
  const cosine = Math.cos(angle);
  if (!(cosine > 0)) throw refusal(where, 'below π/2 rad (90°)', angle);
  const q = Math.sin(angle / 2) ** 2;
  const p = 1 - q;
  const { aRe, aIm, bRe, bIm } = map;
  map.aRe = p * aRe + q * bRe;
  map.aIm = p * aIm - q * bIm;
  map.bRe = p * bRe + q * aRe;
  map.bIm = p * bIm - q * aIm;
  map.determinant *= cosine;
}
