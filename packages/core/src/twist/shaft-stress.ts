import { checkFinite } from '../internal/checks.js';
import type { Shaft } from '../line/types.js';
import { polarSecondMoment } from './polar-second-moment.js';
import type { ShaftStress } from './types.js';

/** What one section of a shaft carries. */
export interface SectionLoad {
  /** N·m about the axis, of either sign. */
  readonly torque: number;
  /** N·m of bending. Default 0. */
  readonly bendingMoment?: number;
}

/**
 * Stress at the surface of a round shaft under torque and bending.
 *
 * τ = T d / 2J, σ = M d / 2I, J = 2I = π (d⁴ − dᵢ⁴) / 32, von Mises √(σ² + 3τ²)
 *
 * @param shaft - its diameters in m and its material
 * @param load - `torque` and `bendingMoment` in N·m
 * @returns stresses in Pa, and the factor by which the von Mises stress stays below yield
 * @throws RangeError where a load is not finite
 * @remarks Of the plain section: flats, threads, holes and the marks of set screws raise it locally.
 * @example
 * const shaft = exampleLine().shafts[1];
 * const { shear } = shaftStress(shaft, { torque: 0.2 });
 * shear / 1e6 // → 8.15
 * @see Budynas and Nisbett, "Shigley's Mechanical Engineering Design", 9th ed., §3-12 and §5-4
 */
export function shaftStress(shaft: Shaft, { torque, bendingMoment = 0 }: SectionLoad): ShaftStress {
  checkFinite('shaftStress: torque', torque);
  checkFinite('shaftStress: bendingMoment', bendingMoment);
  const radiusOverMoment = shaft.outerDiameter / (2 * polarSecondMoment(shaft));
  const shear = Math.abs(torque) * radiusOverMoment;
  const bending = 2 * Math.abs(bendingMoment) * radiusOverMoment;
  const vonMises = Math.sqrt(bending ** 2 + 3 * shear ** 2);
  return { shear, bending, vonMises, yieldFactor: shaft.material.yieldStrength / vonMises };
}
