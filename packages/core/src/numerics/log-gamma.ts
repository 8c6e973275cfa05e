/** Lanczos coefficients for g = 7, n = 9 (Godfrey); relative error below 1e−14. */
const LANCZOS: readonly number[] = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
  12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
];

/**
 * Natural logarithm of the gamma function for x > 0.
 *
 * @see Lanczos, "A precision approximation of the gamma function", SIAM J. Numer. Anal. B 1, 1964; coefficients from memory
 */
export function logGamma(x: number): number {
  if (x < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * x)) - logGamma(1 - x);
  const shifted = x - 1;
  const base = shifted + 7.5;
  const series = LANCZOS.reduce((sum, c, i) => sum + (i === 0 ? c : c / (shifted + i)), 0);
  return 0.5 * Math.log(2 * Math.PI) + (shifted + 0.5) * Math.log(base) - base + Math.log(series);
}
