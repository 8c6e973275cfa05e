import type { TwistModel } from './build-twist-model.js';

/** A symmetric tridiagonal matrix: `own[i]` on the diagonal, `across[i]` between rows i − 1 and i. */
export interface Tridiagonal {
  readonly own: Float64Array;
  readonly across: Float64Array;
}

/**
 * Dynamic stiffness D(ω) of the line in twist, D θ = torque at its nodes.
 *
 * A bar of stiffness k that a twist crosses in the time t gives kx [cot x, −csc x; −csc x, cot x], x = ωt: exact, its own
 * inertia included, and the spring that it is for t = 0. A lump gives −ω² J.
 *
 * @param frequency - ω in rad/s, greater than 0
 * @see W. T. Thomson, "Theory of Vibration with Applications", §8.3 (bars in torsion)
 */
export function chainMatrix(
  { freedom, freedoms, stiffness, time, lumps }: TwistModel,
  frequency: number,
): Tridiagonal {
  const own = new Float64Array(freedoms);
  const across = new Float64Array(freedoms);
  for (let node = 0; node < freedom.length; node++) {
    const row = freedom[node] ?? 0;
    const next = freedom[node + 1] ?? row;
    own[row] = (own[row] ?? 0) - frequency ** 2 * (lumps[node] ?? 0);
    if (next === row) continue;
    const phase = frequency * (time[node] ?? 0);
    const scale = phase === 0 ? (stiffness[node] ?? 0) : ((stiffness[node] ?? 0) * phase) / Math.sin(phase);
    const same = scale * Math.cos(phase);
    own[row] = (own[row] ?? 0) + same;
    own[next] = (own[next] ?? 0) + same;
    across[next] = -scale;
  }
  return { own, across };
}
