import type { SymmetricBand } from './types.js';

/** A symmetric band of zeros, to be filled by {@link addBlock}. */
export function createBand(size: number, halfBandwidth: number): SymmetricBand {
  return { size, halfBandwidth, values: new Float64Array(size * (halfBandwidth + 1)) };
}
