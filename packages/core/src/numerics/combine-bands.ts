import type { SymmetricBand } from './types.js';

/** A + factor · B for two bands of the same shape, in new memory or in that of a work band. */
export function combineBands(
  first: SymmetricBand,
  second: SymmetricBand,
  factor: number,
  values: Float64Array = new Float64Array(first.values.length),
): SymmetricBand {
  for (let i = 0; i < values.length; i++)
    values[i] = (first.values[i] ?? 0) + factor * (second.values[i] ?? 0);
  return { size: first.size, halfBandwidth: first.halfBandwidth, values };
}
