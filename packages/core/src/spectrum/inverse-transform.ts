import type { FourierPlan } from './fourier-plan.js';

/** x(n) = (1/N) Σ X(k) e^(2πikn/N), in place of `data`: real and imaginary parts change places before and after. */
export function inverseTransform(plan: FourierPlan, out: Float64Array, data: Float64Array): void {
  swapParts(data, 1);
  plan.transform(out, data);
  swapParts(out, 1 / plan.length);
}

function swapParts(data: Float64Array, scale: number): void {
  for (let i = 0; i < data.length; i += 2) {
    const real = data[i] ?? 0;
    data[i] = scale * (data[i + 1] ?? 0);
    data[i + 1] = scale * real;
  }
}
