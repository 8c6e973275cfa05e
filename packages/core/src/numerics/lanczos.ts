import { dot } from './dot.js';
import { orthogonalise } from './orthogonalise.js';
import { createRandom, type Random } from './random.js';
import { tridiagonalEigenpairs } from './tridiagonal-eigenpairs.js';
import type { Eigenpairs } from './types.js';

export interface LanczosOptions {
  /** Writes C x into `product`; C is symmetric. */
  readonly apply: (x: Float64Array, product: Float64Array) => void;
  readonly size: number;
  /** How many of the largest positive eigenvalues to find. */
  readonly count: number;
  /** Orthonormal vectors to stay clear of: eigenvectors already known. */
  readonly known: readonly Float64Array[];
  readonly seed: number;
}

/** Residual of an accepted pair over its eigenvalue; the eigenvalue itself is good to its square unless another is near. */
const TOLERANCE = 1e-7;

/**
 * Largest positive eigenvalues of a symmetric operator, descending, with orthonormal vectors.
 *
 * @returns at most `count` pairs; fewer only where the operator has fewer positive ones away from `known`. One start
 *   vector sees one vector of an eigenvalue that several share: the caller counts, and asks again with those `known`.
 * @see Beresford Parlett, "The Symmetric Eigenvalue Problem", SIAM 1998, ch. 13 (Lanczos with full reorthogonalisation)
 */
export function lanczos({ apply, size, count, known, seed }: LanczosOptions): Eigenpairs {
  const random = createRandom(seed);
  const basis = [...known];
  const diagonal: number[] = [];
  const offDiagonal: number[] = [];
  const room = size - known.length;
  let next = startVector(size, basis, random);
  for (let step = 1; step <= room; step++) {
    const current = next;
    basis.push(current);
    next = new Float64Array(size);
    apply(current, next);
    diagonal.push(dot(current, next));
    const scale = Math.sqrt(dot(next, next));
    const length = orthogonalise(next, basis);
    if (step === room || isLook(step, count)) {
      const found = converged({ diagonal, offDiagonal, residual: step === room ? 0 : length, count });
      if (found) return inFullSpace(found, basis.slice(known.length));
    }
    if (length > 1e-13 * scale) {
      offDiagonal.push(length);
      for (let i = 0; i < size; i++) next[i] = (next[i] ?? 0) / length;
    } else {
      offDiagonal.push(0);
      next = startVector(size, basis, random);
    }
  }
  return { values: new Float64Array(0), vectors: [] };
}

/** Ritz values are worth a look from about here on, and then now and again: by experience on shaft lines. */
function isLook(step: number, count: number): boolean {
  const since = step - Math.ceil(1.5 * count) - 7;
  return since >= 0 && since % Math.max(2, Math.ceil(count / 3)) === 0;
}

/** A unit vector of no preferred direction, clear of the basis. */
function startVector(size: number, basis: readonly Float64Array[], random: Random): Float64Array {
  const start = new Float64Array(size);
  if (basis.length >= size) return start;
  for (let i = 0; i < size; i++) start[i] = random.uniform() - 0.5;
  const length = orthogonalise(start, basis);
  for (let i = 0; i < size; i++) start[i] = (start[i] ?? 0) / length;
  return start;
}

interface Projection {
  readonly diagonal: readonly number[];
  readonly offDiagonal: readonly number[];
  /** Length by which the next vector would leave the basis. */
  readonly residual: number;
  readonly count: number;
}

/** The leading Ritz pairs if all of them have settled. */
function converged({ diagonal, offDiagonal, residual, count }: Projection): Eigenpairs | undefined {
  const last = diagonal.length - 1;
  const ends = tridiagonalEigenpairs(diagonal, offDiagonal, { from: last });
  const leading = leadingOf(ends.values, count);
  if (residual > 0 && leading.length < count) return undefined;
  const settled = leading.every(
    (i) => residual * Math.abs(ends.vectors[i]?.[0] ?? 0) <= TOLERANCE * (ends.values[i] ?? 0),
  );
  if (!settled) return undefined;
  const ritz = tridiagonalEigenpairs(diagonal, offDiagonal);
  return {
    values: Float64Array.from(leading, (i) => ritz.values[i] ?? 0),
    vectors: leading.map((i) => ritz.vectors[i] ?? new Float64Array(0)),
  };
}

/** Where the largest positive values stand, largest first. */
function leadingOf(values: Float64Array, count: number): number[] {
  const largest = values.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  return Array.from(values.keys())
    .filter((i) => (values[i] ?? 0) > 1e-14 * largest)
    .sort((i, j) => (values[j] ?? 0) - (values[i] ?? 0))
    .slice(0, count);
}

function inFullSpace({ values, vectors }: Eigenpairs, basis: readonly Float64Array[]): Eigenpairs {
  const full = vectors.map((weights) => {
    const vector = new Float64Array(basis[0]?.length ?? 0);
    basis.forEach((unit, k) => {
      const weight = weights[k] ?? 0;
      for (let i = 0; i < vector.length; i++) vector[i] = (vector[i] ?? 0) + weight * (unit[i] ?? 0);
    });
    return vector;
  });
  return { values, vectors: full };
}
