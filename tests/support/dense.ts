import { Matrix } from 'ml-matrix';
import type { SymmetricBand } from '../../packages/core/src/numerics/types.js';

/** The whole matrix of a band, for comparison with general-purpose solvers. */
export function dense({ size, halfBandwidth, values }: SymmetricBand): Matrix {
  const full = Matrix.zeros(size, size);
  for (let i = 0; i < size; i++) {
    for (let j = Math.max(0, i - halfBandwidth); j <= i; j++) {
      const value = values[i * (halfBandwidth + 1) + halfBandwidth - (i - j)]!;
      full.set(i, j, value);
      full.set(j, i, value);
    }
  }
  return full;
}
