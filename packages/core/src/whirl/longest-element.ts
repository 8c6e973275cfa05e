import type { Section } from './section.js';

/** Accepted error of a frequency: 0.01 %, less a quarter for what discs and joints add. */
const ERROR = 7.5e-5;
/** Over the radius of gyration: shorter waves than such elements carry are beyond beam theory. */
const SHORTEST = 0.04;

/**
 * Longest element, in m, that keeps a frequency of a uniform beam within 0.01 %.
 *
 * With k the wavenumber of a Timoshenko beam, the element's relative error is
 * (kh)⁴ / 1440 + (EI k² / κGA) (kh)² / 24: cubic displacement, shear constant along the element.
 *
 * @param frequency - rad/s
 * @remarks Derived from the leading terms of the element's energy error; halving tests hold it to account.
 */
export function longestElement(
  { bendingStiffness, shearStiffness, massPerLength, inertiaPerLength }: Section,
  frequency: number,
): number {
  const square = frequency ** 2;
  const rotation = inertiaPerLength * square;
  const shearing = ((bendingStiffness * massPerLength) / shearStiffness) * square;
  const root = Math.sqrt((rotation - shearing) ** 2 + 4 * bendingStiffness * massPerLength * square);
  const wavenumberSquare = (rotation + shearing + root) / (2 * bendingStiffness);
  const shear = (bendingStiffness * wavenumberSquare) / shearStiffness / 24;
  const phaseSquare = (2 * ERROR) / (shear + Math.sqrt(shear ** 2 + ERROR / 360));
  return Math.sqrt(
    Math.max(phaseSquare / wavenumberSquare, SHORTEST ** 2 * (inertiaPerLength / massPerLength)),
  );
}
