import { combineBands } from './combine-bands.js';
import { eliminateBand } from './eliminate-band.js';
import type { SymmetricBand } from './types.js';

/**
 * How many eigenvalues of K φ = λ B φ lie in 0 < λ < `shift`, for K positive definite and B of any sign.
 *
 * The negative pivots of K − λB = L D Lᵀ number the eigenvalues passed on the way from λ = 0 (Sylvester's law of inertia).
 *
 * @remarks Pivots are not exchanged, which keeps the band. A shift within about 1e-9 of an eigenvalue may fall on either
 *   side of it; a pivot of exactly 0 counts as negative.
 * @see Beresford Parlett, "The Symmetric Eigenvalue Problem", SIAM 1998, §3.3 and §15.3
 */
export function countBelow(
  stiffness: SymmetricBand,
  { inertia, shift }: { readonly inertia: SymmetricBand; readonly shift: number },
): number {
  return eliminateBand(combineBands(stiffness, inertia, -shift), stiffness).negative;
}
