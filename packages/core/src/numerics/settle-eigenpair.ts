import { combineBands } from './combine-bands.js';
import { dot } from './dot.js';
import { eliminateBand } from './eliminate-band.js';
import { multiplyBand } from './multiply-band.js';
import { solveEliminated } from './solve-eliminated.js';
import { solveLower } from './solve-lower.js';
import type { BandFactor, SymmetricBand } from './types.js';

/** An eigenpair of K φ = λ B φ with φᵀ K φ = 1. */
export interface SettledPair {
  readonly value: number;
  readonly vector: Float64Array;
  /** K φ */
  readonly load: Float64Array;
  /** ‖L⁻¹ (K φ − λ B φ)‖, K = L Lᵀ: the value is good to its square unless another is near. */
  readonly residual: number;
}

export interface Pencil {
  readonly stiffness: SymmetricBand;
  readonly inertia: SymmetricBand;
  /** Of the stiffness. */
  readonly factor: BandFactor;
}

const TOLERANCE = 1e-7;
const MOST_STEPS = 8;
/** A step that gains less than this has met the rounding of the matrices. */
const STALLED = 0.5;
/** Beyond this a pair is a guess still. */
const ROUGH = 1e-7;

/**
 * The eigenpair that Rayleigh quotient iteration finds from a guess.
 *
 * @param guess - not zero; not written to
 * @returns the pair, settled to a residual of 1e-9 or as far as rounding lets it; nothing where the iteration leaves the
 *   positive eigenvalues or does not settle at all
 * @see Beresford Parlett, "The Symmetric Eigenvalue Problem", SIAM 1998, §4.6 and §15.9 (cubic convergence)
 */
export function settleEigenpair(pencil: Pencil, guess: Float64Array): SettledPair | undefined {
  const { stiffness, inertia } = pencil;
  const band = new Float64Array(stiffness.values.length);
  const vectors = {
    x: Float64Array.from(guess),
    load: new Float64Array(guess.length),
    moved: new Float64Array(guess.length),
    rest: new Float64Array(guess.length),
  };
  let before = Infinity;
  for (let step = 0; step < MOST_STEPS; step++) {
    const found = quotient(pencil, vectors);
    if (!found) return undefined;
    const { value, residual } = found;
    const stalled = residual > STALLED * before && residual < ROUGH;
    if (residual <= TOLERANCE || stalled) return { value, vector: vectors.x, load: vectors.load, residual };
    solveEliminated(eliminateBand(combineBands(stiffness, inertia, -value, band), stiffness), vectors.moved);
    vectors.x.set(vectors.moved);
    before = residual;
  }
  return undefined;
}

interface Vectors {
  readonly x: Float64Array;
  /** K x */
  readonly load: Float64Array;
  /** B x */
  readonly moved: Float64Array;
  /** L⁻¹ (K x − λ B x) */
  readonly rest: Float64Array;
}

/** Scales x to xᵀ K x = 1, fills the other vectors, and gives the Rayleigh quotient with its residual. */
function quotient(
  { stiffness, inertia, factor }: Pencil,
  { x, load, moved, rest }: Vectors,
): { readonly value: number; readonly residual: number } | undefined {
  multiplyBand(stiffness, x, load);
  const scale = 1 / Math.sqrt(dot(x, load));
  if (!(scale > 0 && scale < Infinity)) return undefined;
  for (let i = 0; i < x.length; i++) {
    x[i] = (x[i] ?? 0) * scale;
    load[i] = (load[i] ?? 0) * scale;
  }
  multiplyBand(inertia, x, moved);
  const value = 1 / dot(x, moved);
  if (!(value > 0 && value < Infinity)) return undefined;
  for (let i = 0; i < x.length; i++) rest[i] = (load[i] ?? 0) - value * (moved[i] ?? 0);
  solveLower(factor, rest);
  return { value, residual: Math.sqrt(dot(rest, rest)) };
}
