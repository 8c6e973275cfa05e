import type { ComplexVector } from './complex-vector.js';
import type { SymmetricBand } from './types.js';

/** A complex symmetric band A = R + iS (not Hermitian): two real bands of one shape. */
export interface ComplexBand {
  readonly real: SymmetricBand;
  readonly imaginary: SymmetricBand;
}

/** L and 1/D of A = L D Lᵀ. */
export interface ComplexBandFactor {
  readonly lower: ComplexBand;
  readonly reciprocals: ComplexVector;
}

/**
 * Elimination A = L D Lᵀ of a complex symmetric band; the work band is overwritten by L.
 *
 * @remarks Rows are not exchanged: for a definite imaginary part, as damping gives, no pivot vanishes.
 * @see Nicholas Higham, "Factorizing complex symmetric matrices with positive definite real and imaginary parts",
 *   Mathematics of Computation 67, 1998, 1591–1599
 */
export function factorComplexBand(work: ComplexBand): ComplexBandFactor {
  const { size } = work.real;
  const reciprocals = { real: new Float64Array(size), imaginary: new Float64Array(size) };
  for (let i = 0; i < size; i++) eliminateRow(work, reciprocals, i);
  return { lower: work, reciprocals };
}

function eliminateRow(work: ComplexBand, reciprocals: ComplexVector, i: number): void {
  const { halfBandwidth } = work.real;
  const first = Math.max(0, i - halfBandwidth);
  for (let j = first; j < i; j++) takeProducts(work, { i, j, first });
  const place = (i + 1) * (halfBandwidth + 1) - 1;
  let real = work.real.values[place] ?? 0;
  let imaginary = work.imaginary.values[place] ?? 0;
  for (let j = first; j < i; j++) {
    const at = place - i + j;
    const re = work.real.values[at] ?? 0;
    const im = work.imaginary.values[at] ?? 0;
    const p = reciprocals.real[j] ?? 0;
    const q = reciprocals.imaginary[j] ?? 0;
    const entryReal = re * p - im * q;
    const entryImaginary = re * q + im * p;
    work.real.values[at] = entryReal;
    work.imaginary.values[at] = entryImaginary;
    real -= entryReal * re - entryImaginary * im;
    imaginary -= entryReal * im + entryImaginary * re;
  }
  const square = real * real + imaginary * imaginary;
  reciprocals.real[i] = real / square;
  reciprocals.imaginary[i] = -imaginary / square;
}

/** Takes from entry (i, j) the products of the columns before it. */
function takeProducts(
  { real, imaginary }: ComplexBand,
  { i, j, first }: { readonly i: number; readonly j: number; readonly first: number },
): void {
  const width = real.halfBandwidth;
  const row = i * width + width;
  const other = j * width + width;
  let re = real.values[row + j] ?? 0;
  let im = imaginary.values[row + j] ?? 0;
  for (let k = first; k < j; k++) {
    const p = real.values[row + k] ?? 0;
    const q = imaginary.values[row + k] ?? 0;
    const r = real.values[other + k] ?? 0;
    const s = imaginary.values[other + k] ?? 0;
    re -= p * r - q * s;
    im -= p * s + q * r;
  }
  real.values[row + j] = re;
  imaginary.values[row + j] = im;
}
