import type { TrialRun } from './types.js';

/**
 * How well the places of the trial masses tell apart the two directions and the sensitivity: 1 for equal masses evenly
 * round the shaft, 0 where they leave one of the three open.
 *
 * det Σ v vᵀ / n, v = (√2 μ cos φ, √2 μ sin φ, μ²), μ the mass over the root mean square of all
 */
export function spreadOfPlaces(trials: readonly Pick<TrialRun, 'mass' | 'angle'>[]): number {
  const n = trials.length;
  const mean = Math.sqrt(trials.reduce((sum, { mass }) => sum + mass * mass, 0) / n);
  const rows = trials.map(({ mass, angle }) => {
    const share = mass / mean;
    return [Math.SQRT2 * share * Math.cos(angle), Math.SQRT2 * share * Math.sin(angle), share ** 2] as const;
  });
  const sum = (i: 0 | 1 | 2, j: 0 | 1 | 2): number =>
    rows.reduce((total, row) => total + row[i] * row[j], 0) / n;
  const [xx, xy, xz, yy, yz, zz] = [sum(0, 0), sum(0, 1), sum(0, 2), sum(1, 1), sum(1, 2), sum(2, 2)];
  return xx * (yy * zz - yz * yz) - xy * (xy * zz - yz * xz) + xz * (xy * yz - yy * xz);
}
