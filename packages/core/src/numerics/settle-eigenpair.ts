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

const TOLERANCE = 1e-9;
const MOST_STEPS = 8;

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
  let vector = Float64Array.from(guess);
  let best: SettledPair | undefined;
  for (let step = 0; step < MOST_STEPS; step++) {
    const moved = new Float64Array(vector.length);
    const pair = quotient(pencil, vector, moved);
    if (!pair) return undefined;
    if (pair.residual <= TOLERANCE) return pair;
    if (best && pair.residual > STALLED * best.residual && best.residual < ROUGH) return best;
    if (!best || pair.residual < best.residual) best = pair;
    solveEliminated(eliminateBand(combineBands(stiffness, inertia, -pair.value), stiffness), moved);
    vector = moved;
  }
  return best && best.residual < ROUGH ? best : undefined;
}

/** A step that gains less than this has met the rounding of the matrices. */
const STALLED = 0.5;
/** Beyond this a pair is a guess still. */
const ROUGH = 1e-5;

/** Scales x to xᵀ K x = 1, and gives its Rayleigh quotient and residual; `moved` becomes B x. */
function quotient(
  { stiffness, inertia, factor }: Pencil,
  x: Float64Array,
  moved: Float64Array,
): SettledPair | undefined {
  const load = new Float64Array(x.length);
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
  const rest = new Float64Array(x.length);
  for (let i = 0; i < x.length; i++) rest[i] = (load[i] ?? 0) - value * (moved[i] ?? 0);
  solveLower(factor, rest);
  return { value, vector: x, load, residual: Math.sqrt(dot(rest, rest)) };
}
