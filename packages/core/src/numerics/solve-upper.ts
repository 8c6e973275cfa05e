import type { BandFactor } from './types.js';

/** Replaces the work vector x by L⁻ᵀ x. */
export function solveUpper({ size, halfBandwidth, values, reciprocals }: BandFactor, x: Float64Array): void {
  for (let i = size - 1; i >= 0; i--) {
    const row = i * (halfBandwidth + 1) + halfBandwidth - i;
    const solved = (x[i] ?? 0) * (reciprocals[i] ?? 0);
    x[i] = solved;
    for (let j = Math.max(0, i - halfBandwidth); j < i; j++)
      x[j] = (x[j] ?? 0) - (values[row + j] ?? 0) * solved;
  }
}
