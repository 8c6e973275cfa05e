import type { EquivalentJoint } from './types.js';

/**
 * Speed ratio r of one joint and its slope over the input angle θ, which is its angular acceleration over ω₁².
 *
 * r = cos β / (cos²p + cos²β sin²p), dr/dθ = cos β sin²β sin 2p / (cos²p + cos²β sin²p)², p = θ − phase
 */
export function ratioAndSlope(
  { angle, cosine, phase }: EquivalentJoint,
  inputAngle: number,
): { readonly ratio: number; readonly slope: number } {
  const cos = Math.cos(inputAngle - phase);
  const sin = Math.sin(inputAngle - phase);
  const divisor = cos ** 2 + (cosine * sin) ** 2;
  return {
    ratio: cosine / divisor,
    slope: (2 * cosine * Math.sin(angle) ** 2 * sin * cos) / divisor ** 2,
  };
}
