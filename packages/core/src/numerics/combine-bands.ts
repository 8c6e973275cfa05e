import type { SymmetricBand } from './types.js';

/** A + factor · B for two bands of the same shape. */
export function combineBands(first: SymmetricBand, second: SymmetricBand, factor: number): SymmetricBand {
  const values = new Float64Array(first.values.length);
  for (let i = 0; i < values.length; i++)
    values[i] = (first.values[i] ?? 0) + factor * (second.values[i] ?? 0);
  return { size: first.size, halfBandwidth: first.halfBandwidth, values };
}
