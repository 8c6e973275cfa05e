import type { Disc, ShaftLine } from '../line/types.js';
import { isPropeller } from './is-propeller.js';

/** Polar inertia with the water that swings along, over that of the propeller alone; practice has 1.25 to 1.30. From memory. */
const WET_POLAR_FACTOR = 1.25;

/** Polar inertia of a disc as it swings in water, kg·m²: the propeller's times `wetInertiaFactor`, 1.25 if absent. */
export function wetPolarInertia(
  line: ShaftLine,
  place: { readonly shaft: number; readonly disc: Disc },
): number {
  const { polarInertia } = place.disc;
  if (!isPropeller(line, place)) return polarInertia;
  return polarInertia * (line.propeller?.wetInertiaFactor ?? WET_POLAR_FACTOR);
}
