import { minus, over, times, type Complex } from './complex.js';

/** A complex symmetric system: `own[i]` on the diagonal, `across[i]` between rows i − 1 and i. */
export interface TridiagonalSystem {
  readonly own: readonly Complex[];
  readonly across: readonly Complex[];
  readonly load: readonly Complex[];
}

/**
 * Solves a complex symmetric tridiagonal system.
 *
 * @remarks Elimination without exchange of rows: for systems whose losses keep the pivots away from zero.
 * @see Samuel Conte and Carl de Boor, "Elementary Numerical Analysis", 3rd ed., §4.2
 */
export function solveTridiagonal({ own, across, load }: TridiagonalSystem): Complex[] {
  const pivots: Complex[] = [];
  const solution: Complex[] = [];
  own.forEach((entry, i) => {
    const coupling = across[i] ?? ZERO;
    const share = i === 0 ? ZERO : over(coupling, pivots[i - 1] ?? ZERO);
    pivots.push(minus(entry, times(share, coupling)));
    solution.push(minus(load[i] ?? ZERO, times(share, solution[i - 1] ?? ZERO)));
  });
  for (let i = own.length - 1; i >= 0; i--) {
    const rest = times(across[i + 1] ?? ZERO, solution[i + 1] ?? ZERO);
    solution[i] = over(minus(solution[i] ?? ZERO, rest), pivots[i] ?? ZERO);
  }
  return solution;
}

const ZERO: Complex = [0, 0];
