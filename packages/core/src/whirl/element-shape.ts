import type { Section } from './section.js';

/** Weights of (displacement, slope) at the motor end, then at the propeller end. */
export type Weights = readonly [number, number, number, number];

/** How the displacement and slope inside an element follow from those at its ends. */
export interface ElementShape {
  readonly displacement: Weights;
  readonly slope: Weights;
}

/**
 * Shape functions of the beam element at the fraction ξ of its length, the exact static ones.
 *
 * @param place - element length in m and ξ from 0 at the motor end to 1
 * @see Friedman and Kosmatka, as in {@link beamElement}
 */
export function elementShape(
  { bendingStiffness, shearStiffness }: Section,
  { length: h, fraction: x }: { readonly length: number; readonly fraction: number },
): ElementShape {
  const shear = (12 * bendingStiffness) / (shearStiffness * h * h);
  const scale = 1 / (1 + shear);
  const bubble = x * (1 - x);
  return {
    displacement: [
      scale * (1 - x * x * (3 - 2 * x) + shear * (1 - x)),
      scale * h * bubble * (1 - x + shear / 2),
      scale * (x * x * (3 - 2 * x) + shear * x),
      -scale * h * bubble * (x + shear / 2),
    ],
    slope: [
      (-6 * scale * bubble) / h,
      scale * ((1 - x) * (1 - 3 * x) + shear * (1 - x)),
      (6 * scale * bubble) / h,
      scale * (x * (3 * x - 2) + shear * x),
    ],
  };
}
