import { dot } from './dot.js';
import { settleEigenpair, type Pencil, type SettledPair } from './settle-eigenpair.js';

/** Vectors of different eigenvalues overlap by rounding only. */
const OVERLAP = 1e-6;

/**
 * Eigenpairs of K φ = λ B φ found from those of a pencil not far from it, in no particular order.
 *
 * @returns as many different pairs as there are guesses, or nothing where two guesses lead to the same one or one leads
 *   nowhere. Whether they are the lowest is for the caller to count.
 */
export function followEigenpairs(
  pencil: Pencil,
  guess: readonly Float64Array[],
): readonly SettledPair[] | undefined {
  const found: SettledPair[] = [];
  for (const start of guess) {
    const pair = settleEigenpair(pencil, start);
    if (!pair || found.some(({ load }) => Math.abs(dot(load, pair.vector)) > OVERLAP)) return undefined;
    found.push(pair);
  }
  return found;
}
