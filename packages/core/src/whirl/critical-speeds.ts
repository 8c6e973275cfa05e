import type { ShaftLine } from '../line/types.js';
import { checkExcitation } from './check-excitation.js';
import { solvedSpeeds } from './solved-speeds.js';
import type { CriticalSpeed, CriticalSpeedOptions } from './types.js';
import { whirlSolver } from './whirl-solver.js';

/**
 * Shaft speeds at which an excitation order meets a whirl mode of the line, gyroscopic effect included.
 *
 * An excitation of order n turns at ω = nΩ. Forward whirl solves K φ = ω² (M − G/n) φ, backward whirl
 * K φ = ω² (M + G/n) φ, with stiffness K, mass and diametral inertia M, polar inertia G; the speeds are Ω = ω/n.
 *
 * @param line - a checked shaft line, as `parseShaftLine` gives it
 * @param options - `order` n, greater than 0, default 1; `whirl`, default `'forward'`; `count`, 1 to 100, default 4
 * @returns the lowest `count` speeds in rad/s, ascending, each with its mode shape. None is missed: they are counted by
 *   Sylvester's law of inertia. Fewer come back where gyroscopic stiffening leaves fewer.
 * @throws RangeError for an option out of its domain
 * @throws MechanismError if a part of the line is free to move
 * @throws NoConvergenceError if the modes found and the modes counted still differ after the last round
 * @remarks Small deflections, no damping, supports alike in all directions. Shafts are Timoshenko beams along the
 *   developed length: the angles at the joints do not enter the lateral model. A universal joint is a hinge with its mass
 *   at the centre; a flexible one too, with its `bendingStiffness` if it has one; a rigid one carries the slope across.
 *   Where the line has a `propeller`, its disc (of the last shaft, by its name or else the aftmost) carries water: 1.25
 *   times its dry mass and inertia unless the line says otherwise. The mesh keeps the error of the speeds below 0.01 %
 *   of what the model says, and does not hang on `count` up to 4; how firmly the bushes hold is the larger doubt by far:
 *   they are taken as entered here, and `whirlBounds` gives what lies between pinned and fixed.
 * @example
 * ```ts
 * const steel = { name: 'steel', youngsModulus: 206e9, shearModulus: 79.3e9, density: 7850, yieldStrength: 250e6 };
 * const shaft = {
 *   name: 'propeller shaft', length: 0.3, outerDiameter: 0.005, innerDiameter: 0, material: steel,
 *   elevation: 0, plan: 0, yokeTwist: 0, supports: [{ at: 0 }, { at: 0.3 }], discs: [],
 * };
 * const line = { name: 'bare rod on two bushes', shafts: [shaft], joints: [] };
 * const [first] = criticalSpeeds(line, { count: 1 });
 * first.speed // → 702 rad/s
 * const [half] = criticalSpeeds(line, { order: 2, count: 1 });
 * half.speed // → 351 rad/s
 * ```
 * @see W. T. Thomson, "Theory of Vibration with Applications", ch. 9 and 12; J. P. Den Hartog, "Mechanical Vibrations",
 *   4th ed., §6.5 (gyroscopic effect on critical speeds)
 */
export function criticalSpeeds(line: ShaftLine, options: CriticalSpeedOptions = {}): CriticalSpeed[] {
  const pencil = checkExcitation('criticalSpeeds: ', options);
  return solvedSpeeds(whirlSolver(line, 'criticalSpeeds').solve(pencil), pencil);
}
