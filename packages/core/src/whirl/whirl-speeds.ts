import type { ShaftLine } from '../line/types.js';
import { whirlSolver, type WhirlPencil } from './whirl-solver.js';

/**
 * The critical speeds of {@link lineWhirl} for lines close to a given one, without their shapes and no mode solved beyond those
 * asked for: for studies that work out thousands. Each begins from the modes of the given line; the modes are counted all
 * the same, so that a bad beginning costs time and nothing else.
 *
 * @returns a function that gives, for a line, rad/s, ascending, one list for each excitation
 */
export function whirlSpeeds(
  near: ShaftLine,
  pencils: readonly WhirlPencil[],
): (line: ShaftLine) => readonly number[][] {
  const [first] = pencils;
  const start = first ? whirlSolver(near, 'whirlSpeeds', { leastModes: 1 }).solve(first).pairs.vectors : [];
  return (line) => {
    const { solve } = whirlSolver(line, 'whirlSpeeds', { leastModes: 1, start });
    return pencils.map((pencil) => {
      const { values } = solve(pencil).pairs;
      return Array.from(values.subarray(0, pencil.count), (value) => Math.sqrt(value) / pencil.order);
    });
  };
}
