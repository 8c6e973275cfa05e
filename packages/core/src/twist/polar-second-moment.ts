import type { Shaft } from '../line/types.js';

/** Polar second moment of a round section, π (d⁴ − dᵢ⁴) / 32, in m⁴. */
export function polarSecondMoment({
  outerDiameter,
  innerDiameter,
}: Pick<Shaft, 'outerDiameter' | 'innerDiameter'>): number {
  return (Math.PI / 32) * (outerDiameter ** 4 - innerDiameter ** 4);
}
