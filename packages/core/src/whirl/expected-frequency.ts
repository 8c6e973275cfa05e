import type { ShaftLine } from '../line/types.js';
import { section } from './section.js';

/** Half waves in the line beyond the count of the mode, for what the supports add. */
const SPARE = 1.5;

/**
 * Rough upper estimate of a whirl frequency, in rad/s, to size the first mesh by.
 *
 * Mode j of a long beam has about j half waves: √ω Σ l (ρA/EI)^¼ ≈ jπ.
 */
export function expectedFrequency(line: ShaftLine, mode: number): number {
  let phase = 0;
  for (const shaft of line.shafts) {
    const { massPerLength, bendingStiffness } = section(shaft);
    phase += shaft.length * (massPerLength / bendingStiffness) ** 0.25;
  }
  return (((mode + SPARE) * Math.PI) / phase) ** 2;
}
