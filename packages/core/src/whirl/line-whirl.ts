import type { ShaftLine } from '../line/types.js';
import { checkExcitation } from './check-excitation.js';
import { solvedSpeeds } from './solved-speeds.js';
import type { CriticalSpeedOptions, LineWhirl } from './types.js';
import { whirlSolver } from './whirl-solver.js';

/**
 * The critical speeds of a line for several excitations at once: what `criticalSpeeds` gives for each, in about half
 * the time.
 *
 * The mesh, the matrices and the factor of the stiffness are made once, and the modes of one excitation, a good guess at
 * those of the next, are followed by Rayleigh quotient iteration; each set is counted as in `criticalSpeeds`, and searched
 * anew where it does not hold.
 *
 * @param line - a checked shaft line, as `parseShaftLine` gives it
 * @param excitations - the options of `criticalSpeeds`, one entry for each excitation
 * @returns for each excitation its order and whirl, and the critical speeds in rad/s, ascending
 * @throws RangeError for an excitation out of its domain
 * @throws MechanismError if a part of the line is free to move
 * @throws NoConvergenceError as `criticalSpeeds` does
 * @example
 * const found = lineWhirl(exampleLine(), [{ order: 1 }, { order: 2, whirl: 'backward', count: 1 }]);
 * found[0].modes.length // → 4
 * found[1].modes[0].speed // → 388 rad/s
 * @see criticalSpeeds for the theory; Beresford Parlett, "The Symmetric Eigenvalue Problem", SIAM 1998, §4.6
 */
export function lineWhirl(line: ShaftLine, excitations: readonly CriticalSpeedOptions[]): LineWhirl[] {
  const pencils = excitations.map((one, i) => checkExcitation(`lineWhirl: excitations[${i}].`, one));
  const { solve } = whirlSolver(line, 'lineWhirl');
  return pencils.map((pencil) => ({
    order: pencil.order,
    whirl: pencil.whirl,
    modes: solvedSpeeds(solve(pencil), pencil),
  }));
}
