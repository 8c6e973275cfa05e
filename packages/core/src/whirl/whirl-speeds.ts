import type { ShaftLine } from '../line/types.js';
import { whirlSolver, type WhirlPencil } from './whirl-solver.js';

/**
 * The critical speeds of {@link lineWhirl} for one line after another, without their shapes and no mode solved beyond those
 * asked for: for studies that work out thousands of lines close to each other. Each line begins from the modes of the one
 * before; the modes are counted all the same, so that a bad beginning costs time and nothing else.
 *
 * @returns a function that gives, for a line, rad/s, ascending, one list for each excitation
 */
export function whirlSpeeds(pencils: readonly WhirlPencil[]): (line: ShaftLine) => readonly number[][] {
  let start: readonly Float64Array[] = [];
  return (line) => {
    const { solve } = whirlSolver(line, 'whirlSpeeds', { leastModes: 1, start });
    return pencils.map((pencil, i) => {
      const { values, vectors } = solve(pencil).pairs;
      if (i === 0) start = vectors;
      return Array.from(values.subarray(0, pencil.count), (value) => Math.sqrt(value) / pencil.order);
    });
  };
}
