import { NotPositiveDefiniteError } from './not-positive-definite-error.js';
import type { BandFactor, SymmetricBand } from './types.js';

/** Below this share of its diagonal entry a pivot is rounding, not stiffness. */
const LEAST_PIVOT = 1e-12;

/**
 * Cholesky factor of a symmetric positive definite band: A = L Lᵀ.
 *
 * @throws NotPositiveDefiniteError naming the row whose pivot is not positive, or is lost in rounding
 * @see Gene Golub and Charles Van Loan, "Matrix Computations", 4th ed., §4.3.5 band Cholesky
 */
export function factorBand({ size, halfBandwidth, values: a }: SymmetricBand): BandFactor {
  const values = new Float64Array(a.length);
  const reciprocals = new Float64Array(size);
  for (let i = 0; i < size; i++) {
    const row = i * (halfBandwidth + 1) + halfBandwidth - i;
    const first = Math.max(0, i - halfBandwidth);
    let pivot = a[row + i] ?? 0;
    for (let j = first; j < i; j++) {
      const other = j * (halfBandwidth + 1) + halfBandwidth - j;
      let sum = a[row + j] ?? 0;
      for (let k = first; k < j; k++) sum -= (values[row + k] ?? 0) * (values[other + k] ?? 0);
      sum *= reciprocals[j] ?? 0;
      values[row + j] = sum;
      pivot -= sum * sum;
    }
    if (!(pivot > LEAST_PIVOT * (a[row + i] ?? 0))) throw new NotPositiveDefiniteError(i);
    const diagonal = Math.sqrt(pivot);
    values[row + i] = diagonal;
    reciprocals[i] = 1 / diagonal;
  }
  return { size, halfBandwidth, values, reciprocals };
}
