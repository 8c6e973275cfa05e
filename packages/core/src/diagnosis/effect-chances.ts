import { EFFECT_EDGES, type CauseBehaviour } from './cause-behaviour.js';

/** Chance of each effect, given a measured ratio and its relative standard error, normal in the logarithm. */
export function effectChances(ratio: number, error: number): readonly number[] {
  const below = EFFECT_EDGES.map((edge) => normalShare(Math.log(edge / Math.max(ratio, 1e-3)) / error));
  return [...below, 1].map((share, i) => share - (i === 0 ? 0 : (below[i - 1] ?? 0)));
}

/** Chance of "changes" (below 0.7 or above 1.4) and its opposite. */
export function changeChances(ratio: number, error: number): readonly [number, number] {
  const logarithm = Math.log(Math.max(ratio, 1e-3));
  const same =
    normalShare((Math.log(1.4) - logarithm) / error) - normalShare((Math.log(0.7) - logarithm) / error);
  return [1 - same, same];
}

/** Likelihood of a measured ratio: Σ P(effect | cause) P(effect | ratio). */
export function effectLikelihood(chances: readonly number[], table: CauseBehaviour['propellerOff']): number {
  return chances.reduce((sum, chance, i) => sum + chance * (table[i] ?? 0), 0);
}

/** Φ(z) within 0.01 by the logistic curve, which is finer than the edges are known. */
function normalShare(z: number): number {
  return 1 / (1 + Math.exp(-1.702 * z));
}
