import { NotPositiveDefiniteError } from './not-positive-definite-error.js';

/**
 * Inverse of a small symmetric positive definite matrix, by its Cholesky factor.
 *
 * @param matrix - rows, of which the lower triangle is read
 * @throws NotPositiveDefiniteError where a pivot is lost in rounding
 */
export function invertPositive(matrix: readonly ArrayLike<number>[]): Float64Array[] {
  const size = matrix.length;
  const factor = lowerFactor(matrix);
  const columns = Array.from({ length: size }, (_, column) => {
    const x = new Float64Array(size);
    x[column] = 1;
    return solve(factor, x);
  });
  return columns;
}

function lowerFactor(matrix: readonly ArrayLike<number>[]): Float64Array[] {
  const factor: Float64Array[] = [];
  for (let i = 0; i < matrix.length; i++) {
    const row = new Float64Array(matrix.length);
    factor.push(row);
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i]?.[j] ?? 0;
      for (let k = 0; k < j; k++) sum -= (row[k] ?? 0) * (factor[j]?.[k] ?? 0);
      if (j < i) row[j] = sum / (factor[j]?.[j] ?? 1);
      else if (sum > Number.EPSILON * (matrix[i]?.[i] ?? 0)) row[i] = Math.sqrt(sum);
      else throw new NotPositiveDefiniteError(i);
    }
  }
  return factor;
}

/** Overwrites `x`, which the caller made for it. */
function solve(factor: readonly Float64Array[], x: Float64Array): Float64Array {
  factor.forEach((row, i) => {
    let sum = x[i] ?? 0;
    for (let k = 0; k < i; k++) sum -= (row[k] ?? 0) * (x[k] ?? 0);
    x[i] = sum / (row[i] ?? 1);
  });
  for (let i = factor.length - 1; i >= 0; i--) {
    const solved = (x[i] ?? 0) / (factor[i]?.[i] ?? 1);
    x[i] = solved;
    for (let k = 0; k < i; k++) x[k] = (x[k] ?? 0) - (factor[i]?.[k] ?? 0) * solved;
  }
  return x;
}
