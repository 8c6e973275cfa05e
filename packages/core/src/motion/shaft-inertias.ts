import type { Shaft, ShaftLine } from '../line/types.js';
import { wetDiscs } from '../line/wet-discs.js';
import type { Medium } from './types.js';

/**
 * kg·m²: what turns with each shaft: its own body, its discs, and half of the joint at either end.
 *
 * Body: J = ρ L π (D⁴ − d⁴)/32. In water the propeller carries some along.
 */
export function shaftInertias(line: ShaftLine, medium: Medium): number[] {
  return line.shafts.map((shaft, index) => {
    const discs = medium === 'water' ? wetDiscs(line, index) : shaft.discs;
    const before = line.joints[index - 1]?.polarInertia ?? 0;
    const after = line.joints[index]?.polarInertia ?? 0;
    const carried = discs.reduce((sum, disc) => sum + disc.polarInertia, 0);
    return bodyInertia(shaft) + carried + (before + after) / 2;
  });
}

function bodyInertia({ length, outerDiameter, innerDiameter, material }: Shaft): number {
  return (material.density * length * Math.PI * (outerDiameter ** 4 - innerDiameter ** 4)) / 32;
}
