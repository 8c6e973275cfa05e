import { countBelow } from './count-below.js';
import { factorBand } from './factor-band.js';
import { followEigenpairs } from './follow-eigenpairs.js';
import { lanczos } from './lanczos.js';
import { multiplyBand } from './multiply-band.js';
import { NoConvergenceError } from './no-convergence-error.js';
import type { Pencil } from './settle-eigenpair.js';
import { solveLower } from './solve-lower.js';
import { solveUpper } from './solve-upper.js';
import type { BandFactor, Eigenpairs, SymmetricBand } from './types.js';

/** The count is taken this share below the last eigenvalue, clear of the value itself. */
const CLUSTER = 1e-6;
/** Share by which rounding moves an eigenvalue for each time that it exceeds the lowest, with a wide margin. */
const ROUNDING = 1e3 * Number.EPSILON;
const MOST_ROUNDS = 12;

export interface EigenpairOptions {
  /** B, of any sign. */
  readonly inertia: SymmetricBand;
  readonly count: number;
  /** Of the stiffness, if it is known already. */
  readonly factor?: BandFactor;
  /** Eigenvectors of a pencil not far from this one: a shorter way where they lead to the lowest of this one. */
  readonly guess?: readonly Float64Array[];
}

/**
 * Lowest positive eigenvalues of K φ = λ B φ, ascending, none missed.
 *
 * With K = L Lᵀ they are the reciprocals of the largest positive eigenvalues of L⁻¹ B L⁻ᵀ, which Lanczos finds first;
 * a count of the negative pivots of K − λB then proves that none below the last is missing.
 *
 * @param stiffness - K, positive definite
 * @returns at most `count` pairs, fewer where the pencil has fewer positive eigenvalues; vectors with φᵀ K φ = 1
 * @throws NotPositiveDefiniteError if K is not
 * @throws NoConvergenceError if found and counted eigenvalues still differ after 12 rounds
 */
export function lowestEigenpairs(
  stiffness: SymmetricBand,
  { inertia, count, factor = factorBand(stiffness), guess = [] }: EigenpairOptions,
): Eigenpairs {
  const pencil = { stiffness, inertia, factor };
  return (guess.length === count ? followed(pencil, guess) : undefined) ?? searched(pencil, count);
}

function followed(pencil: Pencil, guess: readonly Float64Array[]): Eigenpairs | undefined {
  const found = followEigenpairs(pencil, guess);
  if (!found) return undefined;
  const lowest = [...found].sort((a, b) => a.value - b.value);
  return missesSome(pencil, lowest) ? undefined : eigenpairs(lowest);
}

function searched(pencil: Pencil, count: number): Eigenpairs {
  const { inertia, factor } = pencil;
  const size = inertia.size;
  const work = new Float64Array(size);
  const apply = (x: Float64Array, product: Float64Array): void => {
    work.set(x);
    solveUpper(factor, work);
    multiplyBand(inertia, work, product);
    solveLower(factor, product);
  };
  let found: Pair[] = [];
  for (let round = 1; round <= MOST_ROUNDS; round++) {
    const more = lanczos({ apply, size, count, known: found.map((pair) => pair.vector), seed: round });
    found = merge(found, more);
    const lowest = found.slice(0, count);
    if (found.length < count || !missesSome(pencil, lowest)) {
      for (const { vector } of lowest) solveUpper(factor, vector);
      return eigenpairs(lowest);
    }
  }
  throw new NoConvergenceError(
    `lowestEigenpairs: found and counted eigenvalues differ after ${MOST_ROUNDS} rounds`,
  );
}

interface Pair {
  readonly value: number;
  readonly vector: Float64Array;
}

function merge(found: readonly Pair[], { values, vectors }: Eigenpairs): Pair[] {
  const added = vectors.map((vector, i) => ({ value: 1 / (values[i] ?? 0), vector }));
  return [...found, ...added].sort((a, b) => a.value - b.value);
}

function eigenpairs(pairs: readonly Pair[]): Eigenpairs {
  return {
    values: Float64Array.from(pairs, ({ value }) => value),
    vectors: pairs.map(({ vector }) => vector),
  };
}

/** Whether fewer were found below the last one than there are. */
function missesSome({ stiffness, inertia }: Pencil, lowest: readonly Pair[]): boolean {
  const last = lowest.at(-1)?.value ?? 0;
  const rounding = ROUNDING * (last / (lowest[0]?.value ?? last));
  const shift = last * (1 - Math.min(0.5, Math.max(CLUSTER, rounding)));
  const below = lowest.filter(({ value }) => value < shift).length;
  return countBelow(stiffness, { inertia, shift }) !== below;
}
