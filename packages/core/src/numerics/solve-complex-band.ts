import type { ComplexBand, ComplexBandFactor } from './complex-band.js';
import type { ComplexVector } from './complex-vector.js';

/** Replaces the work vector x by A⁻¹ x, A = L D Lᵀ. */
export function solveComplexBand({ lower, reciprocals }: ComplexBandFactor, x: ComplexVector): void {
  const { size } = lower.real;
  for (let i = 0; i < size; i++) solveRow(lower, x, i);
  for (let i = 0; i < size; i++) {
    const re = x.real[i] ?? 0;
    const im = x.imaginary[i] ?? 0;
    const p = reciprocals.real[i] ?? 0;
    const q = reciprocals.imaginary[i] ?? 0;
    x.real[i] = re * p - im * q;
    x.imaginary[i] = re * q + im * p;
  }
  for (let i = size - 1; i >= 0; i--) spreadRow(lower, x, i);
}

/** Takes from xᵢ what the unknowns before it give. */
function solveRow({ real, imaginary }: ComplexBand, x: ComplexVector, i: number): void {
  const width = real.halfBandwidth;
  const row = i * width + width;
  let re = x.real[i] ?? 0;
  let im = x.imaginary[i] ?? 0;
  for (let j = Math.max(0, i - width); j < i; j++) {
    const p = real.values[row + j] ?? 0;
    const q = imaginary.values[row + j] ?? 0;
    const r = x.real[j] ?? 0;
    const s = x.imaginary[j] ?? 0;
    re -= p * r - q * s;
    im -= p * s + q * r;
  }
  x.real[i] = re;
  x.imaginary[i] = im;
}

/** Takes from the unknowns before xᵢ what it gives them. */
function spreadRow({ real, imaginary }: ComplexBand, x: ComplexVector, i: number): void {
  const width = real.halfBandwidth;
  const row = i * width + width;
  const re = x.real[i] ?? 0;
  const im = x.imaginary[i] ?? 0;
  for (let j = Math.max(0, i - width); j < i; j++) {
    const p = real.values[row + j] ?? 0;
    const q = imaginary.values[row + j] ?? 0;
    x.real[j] = (x.real[j] ?? 0) - (p * re - q * im);
    x.imaginary[j] = (x.imaginary[j] ?? 0) - (p * im + q * re);
  }
}
