import { combineBands } from './combine-bands.js';
import { countBelow } from './count-below.js';
import { dot } from './dot.js';
import { eliminateBand } from './eliminate-band.js';
import { multiplyBand } from './multiply-band.js';
import { NoConvergenceError } from './no-convergence-error.js';
import { createRandom } from './random.js';
import type { Pencil } from './settle-eigenpair.js';
import { solveEliminated } from './solve-eliminated.js';

/** Relative width to which counting closes in on an eigenvalue. */
const WIDTH = 1e-10;
const MOST_HALVINGS = 2000;
const INVERSE_STEPS = 4;
/** Relative difference allowed between the value counted and the Rayleigh quotient of its vector: what rounding did to one. */
const AGREEMENT = 1e-5;

export interface IsolatedPair {
  readonly value: number;
  readonly vector: Float64Array;
}

/**
 * Lowest positive eigenvalues of K φ = λ B φ by bisection of their count, each with a vector by inverse iteration.
 *
 * Slow and sure: no eigenvalue is too far above the lowest for it.
 *
 * @returns `count` pairs, ascending, with φᵀ K φ = 1; the caller must know that there are as many
 * @throws NoConvergenceError if a vector does not agree with the value counted
 * @see Beresford Parlett, "The Symmetric Eigenvalue Problem", SIAM 1998, §3.5 (slicing the spectrum) and §4.2
 */
export function isolateEigenpairs(pencil: Pencil, count: number): IsolatedPair[] {
  const found: (IsolatedPair & { readonly load: Float64Array })[] = [];
  for (let place = 0; place < count; place++) {
    const shift = bisect(pencil, place);
    const own = inverseIteration(pencil, { shift, known: found });
    if (!(Math.abs(own.value / shift - 1) <= AGREEMENT)) {
      throw new NoConvergenceError(
        `isolateEigenpairs: the vector of eigenvalue ${place + 1} does not agree with its count`,
      );
    }
    found.push(own);
  }
  return found.sort((a, b) => a.value - b.value);
}

/** Where the count of the eigenvalues below goes past `place`. */
function bisect({ stiffness, inertia }: Pencil, place: number): number {
  const passed = (shift: number): boolean => countBelow(stiffness, { inertia, shift }) > place;
  let high = 1;
  while (!passed(high)) high *= 1024;
  let low = high;
  while (passed(low)) low /= 1024;
  for (let step = 0; step < MOST_HALVINGS && high > low * (1 + WIDTH); step++) {
    const middle = Math.sqrt(low * high);
    if (passed(middle)) high = middle;
    else low = middle;
  }
  return Math.sqrt(low * high);
}

interface Search {
  readonly shift: number;
  /** Pairs to stay clear of, with their K φ. */
  readonly known: readonly (IsolatedPair & { readonly load: Float64Array })[];
}

function inverseIteration(
  { stiffness, inertia }: Pencil,
  { shift, known }: Search,
): IsolatedPair & { readonly load: Float64Array } {
  const random = createRandom(known.length + 1);
  const eliminated = eliminateBand(combineBands(stiffness, inertia, -shift), stiffness);
  const x = new Float64Array(stiffness.size).map(() => random.uniform() - 0.5);
  const load = new Float64Array(x.length);
  const moved = new Float64Array(x.length);
  let value = 0;
  for (let step = 0; step < INVERSE_STEPS; step++) {
    if (step > 0) x.set(moved);
    solveEliminated(eliminated, x);
    for (const pair of known) {
      const part = dot(pair.load, x);
      for (let i = 0; i < x.length; i++) x[i] = (x[i] ?? 0) - part * (pair.vector[i] ?? 0);
    }
    multiplyBand(stiffness, x, load);
    const scale = 1 / Math.sqrt(dot(x, load));
    for (let i = 0; i < x.length; i++) {
      x[i] = (x[i] ?? 0) * scale;
      load[i] = (load[i] ?? 0) * scale;
    }
    multiplyBand(inertia, x, moved);
    value = 1 / dot(x, moved);
  }
  return { value, vector: x, load };
}
