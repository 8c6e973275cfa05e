import type { ShaftLine } from '../line/types.js';
import { whirlSolver, type WhirlPencil } from './whirl-solver.js';

/**
 * The critical speeds of {@link lineWhirl} without their shapes, and no mode solved beyond those asked for: for studies that
 * work out thousands of lines.
 *
 * @returns rad/s, ascending, one list for each excitation
 */
export function whirlSpeeds(line: ShaftLine, pencils: readonly WhirlPencil[]): readonly number[][] {
  const { solve } = whirlSolver(line, 'whirlSpeeds', { leastModes: 1 });
  return pencils.map((pencil) => {
    const { values } = solve(pencil).pairs;
    return Array.from(values.subarray(0, pencil.count), (value) => Math.sqrt(value) / pencil.order);
  });
}
