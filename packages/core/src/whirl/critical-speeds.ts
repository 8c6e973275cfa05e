import { checkPositive, checkWhole } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import type { ShaftLine } from '../line/types.js';
import { combineBands } from '../numerics/combine-bands.js';
import { lowestEigenpairs } from '../numerics/lowest-eigenpairs.js';
import { NotPositiveDefiniteError } from '../numerics/not-positive-definite-error.js';
import type { Eigenpairs } from '../numerics/types.js';
import { buildWhirlModel, type WhirlModel } from './build-whirl-model.js';
import { expectedFrequency } from './expected-frequency.js';
import { MechanismError } from './mechanism-error.js';
import { modeShape } from './mode-shape.js';
import type { CriticalSpeed, CriticalSpeedOptions, Whirl } from './types.js';

const MOST_MODES = 100;
const MOST_MESHES = 6;

interface Excitation {
  readonly order: number;
  readonly whirl: Whirl;
  readonly count: number;
}

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
 *   of what the model says; how firmly the bushes hold is the larger doubt by far.
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
  const { order = 1, whirl = 'forward', count = 4 } = options;
  checkOptions({ order, whirl, count });
  const { model, pairs } = solve(line, { order, whirl, count });
  return pairs.vectors.map((vector, i) => ({
    speed: Math.sqrt(pairs.values[i] ?? 0) / order,
    shape: modeShape(model, vector),
  }));
}

function checkOptions({ order, whirl, count }: Excitation): void {
  checkPositive('criticalSpeeds: order', order);
  checkWhole('criticalSpeeds: count', count, [1, MOST_MODES]);
  const known: readonly string[] = ['forward', 'backward'];
  if (!known.includes(whirl)) throw refusal('criticalSpeeds: whirl', "'forward' or 'backward'", whirl);
}

/** Solves on a mesh fit for the estimated highest frequency, and once more if the modes lie higher than that. */
function solve(
  line: ShaftLine,
  excitation: Excitation,
): { readonly model: WhirlModel; readonly pairs: Eigenpairs } {
  let frequency = expectedFrequency(line, excitation.count);
  for (let meshes = 1; ; meshes++) {
    const model = buildWhirlModel(line, { frequency });
    const pairs = solveModel(line, model, excitation);
    const highest = Math.sqrt(pairs.values.at(-1) ?? 0);
    if (highest <= frequency || meshes === MOST_MESHES) return { model, pairs };
    frequency = 1.1 * highest;
  }
}

function solveModel(line: ShaftLine, model: WhirlModel, { order, whirl, count }: Excitation): Eigenpairs {
  const inertia = combineBands(model.mass, model.gyroscopic, (whirl === 'forward' ? -1 : 1) / order);
  try {
    return lowestEigenpairs(model.stiffness, { inertia, count });
  } catch (error) {
    if (!(error instanceof NotPositiveDefiniteError)) throw error;
    throw mechanism(line, model, error.row);
  }
}

function mechanism(line: ShaftLine, { mesh, freedoms }: WhirlModel, row: number): MechanismError {
  const node = Math.max(freedoms.displacement.indexOf(row), freedoms.slope.indexOf(row));
  const shaft = mesh.shaft[node] ?? 0;
  return new MechanismError('criticalSpeeds: line', { shaft, name: line.shafts[shaft]?.name ?? '' });
}
