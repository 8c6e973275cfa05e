import { logGamma } from './log-gamma.js';

/**
 * The value that a ratio of two mean squares exceeds with a given probability (upper quantile of the F distribution).
 *
 * P(F > x) = I_z(ν₂/2, ν₁/2), z = ν₂ / (ν₂ + ν₁ x), solved by bisection on log x
 *
 * @param probability - between 0 and 1, as small as 1e−12
 * @param degrees - ν₁ and ν₂, degrees of freedom above and below, greater than 0, whole or not
 * @see Abramowitz and Stegun, Handbook of Mathematical Functions, 26.6.2 and 26.5.8 (continued fraction)
 */
export function fUpperQuantile(probability: number, [above, below]: readonly [number, number]): number {
  let low = -20;
  let high = 60;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    const z = below / (below + above * Math.exp(middle));
    if (incompleteBeta(z, below / 2, above / 2) > probability) low = middle;
    else high = middle;
  }
  return Math.exp((low + high) / 2);
}

/** I_x(a, b), the regularised incomplete beta function. */
function incompleteBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x));
  return x < (a + 1) / (a + b + 2)
    ? (front * betaFraction(x, a, b)) / a
    : 1 - (front * betaFraction(1 - x, b, a)) / b;
}

/** Lentz's evaluation of the continued fraction of the incomplete beta function. */
function betaFraction(x: number, a: number, b: number): number {
  const tiny = 1e-300;
  let c = 1;
  let d = 1 / nonZero(1 - ((a + b) * x) / (a + 1), tiny);
  let fraction = d;
  for (let m = 1; m < 500; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / nonZero(1 + even * d, tiny);
    c = nonZero(1 + even / c, tiny);
    fraction *= c * d;
    d = 1 / nonZero(1 + odd * d, tiny);
    c = nonZero(1 + odd / c, tiny);
    fraction *= c * d;
    if (Math.abs(c * d - 1) < 1e-14) break;
  }
  return fraction;
}

function nonZero(value: number, tiny: number): number {
  return Math.abs(value) < tiny ? tiny : value;
}
