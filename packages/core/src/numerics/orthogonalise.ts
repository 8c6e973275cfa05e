import { dot } from './dot.js';

/** A pass that leaves this share leaves at most eps over it along the basis, far below what the Ritz values can feel. */
const ENOUGH = 1e-3;

/**
 * Takes from the work vector x its parts along an orthonormal basis, and gives the length that is left.
 *
 * @see W. Kahan and B. Parlett's "twice is enough" in Beresford Parlett, "The Symmetric Eigenvalue Problem", SIAM 1998, §6.9
 */
export function orthogonalise(x: Float64Array, basis: readonly Float64Array[]): number {
  let before = Math.sqrt(dot(x, x));
  for (;;) {
    for (const unit of basis) {
      const part = dot(unit, x);
      for (let i = 0; i < x.length; i++) x[i] = (x[i] ?? 0) - part * (unit[i] ?? 0);
    }
    const after = Math.sqrt(dot(x, x));
    if (after > ENOUGH * before || after === 0) return after;
    before = after;
  }
}
