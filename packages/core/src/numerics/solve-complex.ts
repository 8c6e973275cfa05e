import { magnitude, minus, over, times, type Complex } from './complex.js';

/**
 * Solves a small dense complex system by elimination with partial pivoting.
 *
 * @param rows - the matrix, row by row, square
 * @see Gene Golub and Charles Van Loan, "Matrix Computations", 4th ed., §3.4
 */
export function solveComplex(rows: readonly (readonly Complex[])[], load: readonly Complex[]): Complex[] {
  const work = rows.map((row, i) => [...row, load[i] ?? ZERO]);
  const size = work.length;
  for (let column = 0; column < size; column++) {
    pivot(work, column);
    for (let i = column + 1; i < size; i++) reduce(work, i, column);
  }
  const solution = new Array<Complex>(size).fill(ZERO);
  for (let i = size - 1; i >= 0; i--) {
    const row = work[i] ?? [];
    const known = solution.reduce<Complex>(
      (sum, x, j) => (j > i ? minus(sum, times(row[j] ?? ZERO, x)) : sum),
      row[size] ?? ZERO,
    );
    solution[i] = over(known, row[i] ?? ZERO);
  }
  return solution;
}

/** Brings the row with the largest entry of the column to the diagonal. */
function pivot(work: Complex[][], column: number): void {
  let best = column;
  for (let i = column + 1; i < work.length; i++) {
    if (entry(work, i, column) > entry(work, best, column)) best = i;
  }
  [work[column], work[best]] = [work[best] ?? [], work[column] ?? []];
}

const ZERO: Complex = [0, 0];

function entry(work: readonly (readonly Complex[])[], i: number, j: number): number {
  return magnitude(work[i]?.[j] ?? ZERO);
}

/** Takes from row i its share of the pivot row. */
function reduce(work: Complex[][], i: number, column: number): void {
  const pivotRow = work[column] ?? [];
  const share = over(work[i]?.[column] ?? ZERO, pivotRow[column] ?? ZERO);
  work[i] = (work[i] ?? []).map((value, j) =>
    j < column ? value : minus(value, times(share, pivotRow[j] ?? ZERO)),
  );
}
