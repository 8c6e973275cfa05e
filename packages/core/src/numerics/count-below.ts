import { combineBands } from './combine-bands.js';
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
  const lower = combineBands(stiffness, inertia, -shift);
  const pivots = new Float64Array(lower.size);
  let negative = 0;
  for (let i = 0; i < lower.size; i++) {
    const diagonal = stiffness.values[(i + 1) * (stiffness.halfBandwidth + 1) - 1] ?? 0;
    const pivot = eliminateRow(lower, pivots, i) || -Number.EPSILON * diagonal;
    pivots[i] = pivot;
    if (pivot < 0) negative += 1;
  }
  return negative;
}

/** Turns row i of the work matrix into row i of L, and gives its pivot. */
function eliminateRow({ halfBandwidth, values }: SymmetricBand, pivots: Float64Array, i: number): number {
  const row = i * (halfBandwidth + 1) + halfBandwidth - i;
  const first = Math.max(0, i - halfBandwidth);
  for (let j = first; j < i; j++) {
    const other = j * (halfBandwidth + 1) + halfBandwidth - j;
    let sum = values[row + j] ?? 0;
    for (let k = first; k < j; k++) sum -= (values[row + k] ?? 0) * (values[other + k] ?? 0);
    values[row + j] = sum;
  }
  let pivot = values[row + i] ?? 0;
  for (let j = first; j < i; j++) {
    const scaled = values[row + j] ?? 0;
    const entry = scaled / (pivots[j] ?? 1);
    values[row + j] = entry;
    pivot -= entry * scaled;
  }
  return pivot;
}
