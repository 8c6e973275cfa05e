/**
 * How much of a sine's amplitude a window passes when the sine lies `offset` lines from the line that is read,
 * as a share of what it passes on the line: |W(δ)| / |W(0)|.
 *
 * A cosine-sum window is a sum of shifted Dirichlet kernels, so this costs a few sines whatever its length.
 *
 * @param coefficients - a₀, a₁, … of the window
 * @param length - N, samples
 * @param offset - δ, lines
 */
export function windowResponse(coefficients: readonly number[], length: number, offset: number): number {
  let real = 0;
  let imaginary = 0;
  coefficients.forEach((coefficient, m) => {
    // (−1)ᵐ of the window meets (−1)ᵐ of the kernel's phase, which leaves e^(±jπm/N).
    const half = coefficient / 2;
    const below = half * dirichlet(offset - m, length);
    const above = half * dirichlet(offset + m, length);
    const phase = (Math.PI * m) / length;
    real += (below + above) * Math.cos(phase);
    imaginary += (above - below) * Math.sin(phase);
  });
  return Math.hypot(real, imaginary) / (coefficients[0] ?? 1);
}

/** sin(πx) / (N sin(πx/N)) */
function dirichlet(x: number, length: number): number {
  const denominator = length * Math.sin((Math.PI * x) / length);
  if (Math.abs(denominator) < 1e-12) return Math.cos(Math.PI * x) / Math.cos((Math.PI * x) / length);
  return Math.sin(Math.PI * x) / denominator;
}
