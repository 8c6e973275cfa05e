import type { Shaft } from '../line/types.js';
import { shearCoefficient } from './shear-coefficient.js';

/** What a beam element needs to know of its shaft. */
export interface Section {
  /** N·m² */
  readonly bendingStiffness: number;
  /** N, shear coefficient included. */
  readonly shearStiffness: number;
  /** kg/m */
  readonly massPerLength: number;
  /** kg·m, diametral inertia per length; the polar one is twice this. */
  readonly inertiaPerLength: number;
}

/** Section of a solid or hollow round shaft. */
export function section({ outerDiameter, innerDiameter, material }: Shaft): Section {
  const area = (Math.PI / 4) * (outerDiameter ** 2 - innerDiameter ** 2);
  const secondMoment = (area / 16) * (outerDiameter ** 2 + innerDiameter ** 2);
  const { youngsModulus, shearModulus, density } = material;
  const bore = innerDiameter / outerDiameter;
  return {
    bendingStiffness: youngsModulus * secondMoment,
    shearStiffness: shearCoefficient(youngsModulus / shearModulus, bore) * shearModulus * area,
    massPerLength: density * area,
    inertiaPerLength: density * secondMoment,
  };
}
