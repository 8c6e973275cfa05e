import type { SymmetricBand } from './types.js';

/** Writes A x into the work vector `product`, which must not be x. */
export function multiplyBand(band: SymmetricBand, x: Float64Array, product: Float64Array): void {
  const { size, halfBandwidth, values } = band;
  for (let i = 0; i < size; i++) {
    const row = i * (halfBandwidth + 1) + halfBandwidth - i;
    const own = x[i] ?? 0;
    let sum = (values[row + i] ?? 0) * own;
    for (let j = Math.max(0, i - halfBandwidth); j < i; j++) {
      const entry = values[row + j] ?? 0;
      sum += entry * (x[j] ?? 0);
      product[j] = (product[j] ?? 0) + entry * own;
    }
    product[i] = sum;
  }
}
