import { combineBands } from './combine-bands.js';
import { dot } from './dot.js';
import { eliminateBand } from './eliminate-band.js';
import { multiplyBand } from './multiply-band.js';
import { createRandom } from './random.js';
import { solveEliminated } from './solve-eliminated.js';
import { solveLower } from './solve-lower.js';
import type { BandFactor, Eigenpairs, SymmetricBand } from './types.js';

/** Q(ω) = K + ωC − ω²M with K and M positive definite: each vector then has one positive and one negative root. */
export interface QuadraticPencil {
  readonly stiffness: SymmetricBand;
  /** Of the stiffness. */
  readonly factor: BandFactor;
  /** C, of any sign. */
  readonly coupling: SymmetricBand;
  readonly mass: SymmetricBand;
}

const TOLERANCE = 1e-9;
const MOST_STEPS = 12;
/** The count is taken this share either side of the last root. */
const CLUSTER = 1e-6;
/** Relative width to which counting closes in on a root. */
const WIDTH = 1e-12;
const INVERSE_STEPS = 3;

/**
 * Lowest positive ω with (K + ωC − ω²M) φ = 0, ascending, none missed.
 *
 * The roots are real, and as many lie below ω as Q(ω) has negative eigenvalues. Guesses are followed by Rayleigh functional
 * iteration: x gives the positive root p of xᵀ Q(p) x = 0, and Q(p)⁻¹ (2pM − C) x the next x. What the count does
 * not bear out is found by bisection of the count.
 *
 * @param options - `count`, at most the size; `guess`, one vector for each root, or none
 * @returns the roots with a vector each, φᵀ K φ = 1
 * @see Françoise Tisseur and Karl Meerbergen, "The quadratic eigenvalue problem", SIAM Review 43(2), 2001, §3.8 (hyperbolic);
 *   the count is the law of inertia with the minimax of R. J. Duffin, Arch. Rational Mech. Anal. 4, 1955, 221–233 (from memory)
 */
export function lowestQuadraticRoots(
  pencil: QuadraticPencil,
  { count, guess = [] }: { readonly count: number; readonly guess?: readonly Float64Array[] },
): Eigenpairs {
  const found = (guess.length === count ? followed(pencil, guess) : undefined) ?? isolated(pencil, count);
  return {
    values: Float64Array.from(found, ({ root }) => root),
    vectors: found.map(({ vector }) => vector),
  };
}

interface RootPair {
  readonly root: number;
  readonly vector: Float64Array;
}

function followed(pencil: QuadraticPencil, guess: readonly Float64Array[]): RootPair[] | undefined {
  const found: RootPair[] = [];
  for (const start of guess) {
    const pair = settle(pencil, start);
    if (!pair) return undefined;
    found.push(pair);
  }
  found.sort((a, b) => a.root - b.root);
  const last = found.at(-1)?.root ?? 0;
  const shift = last * (1 - CLUSTER);
  const below = found.filter(({ root }) => root < shift).length;
  const complete = passed(pencil, shift) === below && passed(pencil, last * (1 + CLUSTER)) >= found.length;
  return complete ? found : undefined;
}

function settle(pencil: QuadraticPencil, guess: Float64Array): RootPair | undefined {
  const vector = Float64Array.from(guess);
  for (let step = 0; step < MOST_STEPS; step++) {
    const { root, residual, moved } = functional(pencil, vector);
    if (!(root > 0 && root < Infinity)) return undefined;
    if (residual <= TOLERANCE) return { root, vector };
    solveEliminated(eliminateBand(quadratic(pencil, root), pencil.stiffness), moved);
    vector.set(moved);
  }
  return undefined;
}

/** Scales x to xᵀ K x = 1, and gives its positive root p, ‖L⁻¹ Q(p) x‖, and (2pM − C) x. */
function functional(
  { stiffness, factor, coupling, mass }: QuadraticPencil,
  x: Float64Array,
): { readonly root: number; readonly residual: number; readonly moved: Float64Array } {
  const load = new Float64Array(x.length);
  multiplyBand(stiffness, x, load);
  const scale = 1 / Math.sqrt(dot(x, load));
  for (let i = 0; i < x.length; i++) {
    x[i] = (x[i] ?? 0) * scale;
    load[i] = (load[i] ?? 0) * scale;
  }
  const turning = new Float64Array(x.length);
  const moving = new Float64Array(x.length);
  multiplyBand(coupling, x, turning);
  multiplyBand(mass, x, moving);
  const [c, m] = [dot(x, turning), dot(x, moving)];
  const root = c < 0 ? 2 / (Math.sqrt(c * c + 4 * m) - c) : (c + Math.sqrt(c * c + 4 * m)) / (2 * m);
  const rest = new Float64Array(x.length);
  const moved = new Float64Array(x.length);
  for (let i = 0; i < x.length; i++) {
    const [turn, move] = [turning[i] ?? 0, root * (moving[i] ?? 0)];
    rest[i] = (load[i] ?? 0) + root * (turn - move);
    moved[i] = 2 * move - turn;
  }
  solveLower(factor, rest);
  return { root, residual: Math.sqrt(dot(rest, rest)), moved };
}

function quadratic({ stiffness, coupling, mass }: QuadraticPencil, root: number): SymmetricBand {
  const band = combineBands(stiffness, coupling, root);
  return combineBands(band, mass, -root * root, band.values);
}

/** How many roots lie below. */
function passed(pencil: QuadraticPencil, root: number): number {
  return eliminateBand(quadratic(pencil, root), pencil.stiffness).negative;
}

function isolated(pencil: QuadraticPencil, count: number): RootPair[] {
  return Array.from({ length: count }, (_, place) => {
    const root = bisect(pencil, place);
    return { root, vector: inverseIteration(pencil, root, place) };
  });
}

function bisect(pencil: QuadraticPencil, place: number): number {
  let high = 1;
  while (passed(pencil, high) <= place) high *= 32;
  let low = high;
  while (passed(pencil, low) > place) low /= 32;
  while (high > low * (1 + WIDTH)) {
    const middle = Math.sqrt(low * high);
    if (passed(pencil, middle) > place) high = middle;
    else low = middle;
  }
  return Math.sqrt(low * high);
}

function inverseIteration(pencil: QuadraticPencil, root: number, seed: number): Float64Array {
  const random = createRandom(seed + 1);
  const eliminated = eliminateBand(quadratic(pencil, root), pencil.stiffness);
  const x = new Float64Array(pencil.stiffness.size).map(() => random.uniform() - 0.5);
  for (let step = 0; step < INVERSE_STEPS; step++) {
    solveEliminated(eliminated, x);
    x.set(functional(pencil, x).moved);
  }
  solveEliminated(eliminated, x);
  functional(pencil, x);
  return x;
}
