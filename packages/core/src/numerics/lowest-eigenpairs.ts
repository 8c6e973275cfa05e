import { countBelow } from './count-below.js';
import { eliminateBand } from './eliminate-band.js';
import { factorBand } from './factor-band.js';
import { followEigenpairs } from './follow-eigenpairs.js';
import { isolateEigenpairs } from './isolate-eigenpairs.js';
import { lanczos } from './lanczos.js';
import { multiplyBand } from './multiply-band.js';
import { NoConvergenceError } from './no-convergence-error.js';
import type { Pencil } from './settle-eigenpair.js';
import { solveLower } from './solve-lower.js';
import { solveUpper } from './solve-upper.js';
import type { BandFactor, Eigenpairs, SymmetricBand } from './types.js';

/** The count is taken this share below the last eigenvalue, clear of the value itself. */
const CLUSTER = 1e-6;
/** Lanczos sees an eigenvalue this many times the lowest with fewer digits than it is counted by. */
const WIDE = 1e4;
const MOST_ROUNDS = 6;

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
 * a count of the negative pivots of K − λB then proves that none below the last is missing. Rounding spoils those far above
 * the lowest, by eps times their ratio to it: Rayleigh quotients of K and B themselves restore them. What Lanczos does not
 * find at all is isolated by bisection of the count.
 *
 * @param stiffness - K, positive definite
 * @returns at most `count` pairs, fewer where the pencil has fewer positive eigenvalues; vectors with φᵀ K φ = 1
 * @throws NotPositiveDefiniteError if K is not
 * @throws NoConvergenceError if found and counted eigenvalues differ still
 */
export function lowestEigenpairs(
  stiffness: SymmetricBand,
  { inertia, count, factor = factorBand(stiffness), guess = [] }: EigenpairOptions,
): Eigenpairs {
  const pencil = { stiffness, inertia, factor };
  const known = guess.length === count ? followed(pencil, guess) : undefined;
  return eigenpairs(known ?? attempted(pencil, count) ?? isolated(pencil, count));
}

function followed(pencil: Pencil, guess: readonly Float64Array[]): readonly Pair[] | undefined {
  const found = followEigenpairs(pencil, guess);
  if (!found) return undefined;
  const lowest = [...found].sort((a, b) => a.value - b.value);
  return missesSome(pencil, lowest) ? undefined : lowest;
}

/** The search, or nothing where rounding keeps its small eigenproblem from settling. */
function attempted(pencil: Pencil, count: number): readonly Pair[] | undefined {
  try {
    return searched(pencil, count);
  } catch (error) {
    if (error instanceof NoConvergenceError) return undefined;
    throw error;
  }
}

function searched(pencil: Pencil, count: number): readonly Pair[] | undefined {
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
    const lowest = restored(pencil, found.slice(0, count));
    if (!lowest) return undefined;
    if (lowest.length < count) return lowest.length < positives(pencil) ? undefined : lowest;
    if (!missesSome(pencil, lowest)) return lowest;
  }
  return undefined;
}

/** The pairs in the unknowns of the pencil, their values to the digits that the pencil has. */
function restored(pencil: Pencil, lowest: readonly Pair[]): readonly Pair[] | undefined {
  const own = lowest.map(({ value, vector }) => {
    const copy = Float64Array.from(vector);
    solveUpper(pencil.factor, copy);
    return { value, vector: copy };
  });
  if ((own.at(-1)?.value ?? 0) < WIDE * (own[0]?.value ?? 0)) return own;
  const settled = followEigenpairs(
    pencil,
    own.map(({ vector }) => vector),
  );
  return settled && [...settled].sort((a, b) => a.value - b.value);
}

/** How many positive eigenvalues there are: as many as B has. */
function positives({ stiffness, inertia }: Pencil): number {
  const work = { ...inertia, values: Float64Array.from(inertia.values) };
  return inertia.size - eliminateBand(work, stiffness).negative;
}

function isolated(pencil: Pencil, count: number): readonly Pair[] {
  const lowest = isolateEigenpairs(pencil, Math.min(count, positives(pencil)));
  if (lowest.length > 0 && missesSome(pencil, lowest)) {
    throw new NoConvergenceError('lowestEigenpairs: found and counted eigenvalues differ');
  }
  return lowest;
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
  const shift = (lowest.at(-1)?.value ?? 0) * (1 - CLUSTER);
  const below = lowest.filter(({ value }) => value < shift).length;
  return countBelow(stiffness, { inertia, shift }) !== below;
}
