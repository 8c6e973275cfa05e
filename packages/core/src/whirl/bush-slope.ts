import type { Shaft, Support } from '../line/types.js';
import { section } from './section.js';

/** How a bush resists the slope of the shaft in it. */
export interface BushSlope {
  /** N·m/rad, once the shaft bears on both ends of the bush. */
  readonly stiffness: number;
  /** rad, the slope that the clearance leaves free. */
  readonly freeSlope: number;
}

/**
 * How firmly a bush of some length holds the slope of its shaft.
 *
 * A shaft that leans by more than c/ℓ, c the diametral clearance, bears on both ends of the bush, ℓ apart. On from there it
 * bends between the two like a beam on two pins with a couple at one end, 3EI/ℓ, and presses into the bush: an elastic bed of
 * k/ℓ per length has the angular stiffness kℓ²/12. The two give way one after the other: 1/K = ℓ/3EI + 12/kℓ².
 *
 * @param shaft - that turns in the bush
 * @param support - the bush; without `bore` it has no clearance, without `radialStiffness` its bed is rigid
 * @returns the stiffness in N·m/rad and the free slope in rad; nothing without a `length`
 * @remarks Derived from beam theory, as an estimate: true to its form for a bush about one to three diameters long with
 *   even bearing. An oil film and wear, which opens the ends first, both soften it.
 * @example
 * const { shafts } = exampleLine();
 * const bush = bushSlope(shafts[1], shafts[1].supports[0]);
 * bush.stiffness // → 1841
 * bush.freeSlope // → 0.0030 rad
 * @see derived here; the elastic bed as in M. Hetényi, "Beams on Elastic Foundation", 1946, ch. 3 (rigid bar)
 */
export function bushSlope(shaft: Shaft, support: Support): BushSlope | undefined {
  const { length, bore = shaft.outerDiameter, radialStiffness = Infinity } = support;
  if (length === undefined) return undefined;
  const bending = length / (3 * section(shaft).bendingStiffness);
  const bed = 12 / (radialStiffness * length ** 2);
  return { stiffness: 1 / (bending + bed), freeSlope: (bore - shaft.outerDiameter) / length };
}
