import type { EliminatedBand } from './eliminate-band.js';

/** Replaces the work vector x by A⁻¹ x, A = L D Lᵀ. */
export function solveEliminated({ lower, reciprocals }: EliminatedBand, x: Float64Array): void {
  const { size, halfBandwidth, values } = lower;
  for (let i = 0; i < size; i++) {
    const row = i * (halfBandwidth + 1) + halfBandwidth - i;
    let sum = x[i] ?? 0;
    for (let j = Math.max(0, i - halfBandwidth); j < i; j++) sum -= (values[row + j] ?? 0) * (x[j] ?? 0);
    x[i] = sum;
  }
  for (let i = 0; i < size; i++) x[i] = (x[i] ?? 0) * (reciprocals[i] ?? 0);
  for (let i = size - 1; i >= 0; i--) {
    const row = i * (halfBandwidth + 1) + halfBandwidth - i;
    const solved = x[i] ?? 0;
    for (let j = Math.max(0, i - halfBandwidth); j < i; j++)
      x[j] = (x[j] ?? 0) - (values[row + j] ?? 0) * solved;
  }
}
