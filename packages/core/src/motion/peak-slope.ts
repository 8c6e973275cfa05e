import type { EquivalentJoint } from './types.js';

/**
 * The steepest rise of a joint's speed ratio over the input angle, and where it is.
 *
 * With s = sin²β, q = 2 − s and w = √(q² + 8s²) the exact root is cos 2θ = −c, c = 4s/(q + w). It and
 * 1 − c = 4 cos²β/(q + w + 2s) keep their digits from 0 to 90°; the textbooks' c = 2s/(2 − s) drops a term.
 *
 * @returns `slope`, dimensionless, and `inputAngle` in rad, 0 to below π; the steepest fall is as steep
 * @see derived from the zero of the second derivative of the ratio
 */
export function peakSlope({ angle, cosine, phase }: EquivalentJoint): {
  readonly slope: number;
  readonly inputAngle: number;
} {
  const s = Math.sin(angle) ** 2;
  const q = 2 - s;
  const w = Math.hypot(q, Math.sqrt(8) * s);
  const c = (4 * s) / (q + w);
  const rest = (4 * cosine ** 2) / (q + w + 2 * s);
  const sine = Math.sqrt(rest * (1 + c));
  const divisor = (rest + cosine ** 2 * (1 + c)) / 2;
  const inputAngle = phase + Math.atan2(sine, -c) / 2;
  return {
    slope: (cosine * s * sine) / divisor ** 2,
    inputAngle: inputAngle - Math.PI * Math.floor(inputAngle / Math.PI),
  };
}
