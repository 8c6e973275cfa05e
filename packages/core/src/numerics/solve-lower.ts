import type { BandFactor } from './types.js';

/** Replaces the work vector x by L⁻¹ x. */
export function solveLower({ size, halfBandwidth, values, reciprocals }: BandFactor, x: Float64Array): void {
  for (let i = 0; i < size; i++) {
    const row = i * (halfBandwidth + 1) + halfBandwidth - i;
    let sum = x[i] ?? 0;
    for (let j = Math.max(0, i - halfBandwidth); j < i; j++) sum -= (values[row + j] ?? 0) * (x[j] ?? 0);
    x[i] = sum * (reciprocals[i] ?? 0);
  }
}
