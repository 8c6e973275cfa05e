import type { SymmetricBand } from './types.js';

/** L and D of A = L D Lᵀ: the unit lower triangle as {@link SymmetricBand} stores its lower half, diagonal left out. */
export interface EliminatedBand {
  readonly lower: SymmetricBand;
  /** 1 / Dᵢᵢ, since the solves only ever divide by the pivots. */
  readonly reciprocals: Float64Array;
  /** How many pivots are below zero: as many as A has negative eigenvalues. */
  readonly negative: number;
}

/**
 * Symmetric elimination A = L D Lᵀ of a band of any sign; the work band is overwritten by L.
 *
 * @param scale - a band of the same shape: a pivot of exactly 0 becomes a rounding error below 0 on its diagonal
 * @remarks Rows are not exchanged, which keeps the band.
 * @see Beresford Parlett, "The Symmetric Eigenvalue Problem", SIAM 1998, §3.3
 */
export function eliminateBand(work: SymmetricBand, scale: SymmetricBand): EliminatedBand {
  const reciprocals = new Float64Array(work.size);
  let negative = 0;
  for (let i = 0; i < work.size; i++) {
    const diagonal = scale.values[(i + 1) * (scale.halfBandwidth + 1) - 1] ?? 0;
    const pivot = eliminateRow(work, reciprocals, i) || -Number.EPSILON * diagonal;
    reciprocals[i] = 1 / pivot;
    if (pivot < 0) negative += 1;
  }
  return { lower: work, reciprocals, negative };
}

/** Turns row i of the work matrix into row i of L, and gives its pivot. */
function eliminateRow(
  { halfBandwidth, values }: SymmetricBand,
  reciprocals: Float64Array,
  i: number,
): number {
  const row = i * (halfBandwidth + 1) + halfBandwidth - i;
  const first = Math.max(0, i - halfBandwidth);
  let pivot = values[row + i] ?? 0;
  for (let j = first; j < i; j++) {
    const other = j * (halfBandwidth + 1) + halfBandwidth - j;
    let sum = values[row + j] ?? 0;
    for (let k = first; k < j; k++) sum -= (values[row + k] ?? 0) * (values[other + k] ?? 0);
    values[row + j] = sum;
  }
  for (let j = first; j < i; j++) {
    const scaled = values[row + j] ?? 0;
    const entry = scaled * (reciprocals[j] ?? 0);
    values[row + j] = entry;
    pivot -= entry * scaled;
  }
  return pivot;
}
