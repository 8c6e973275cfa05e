import { checkNotNegative, checkWhole } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import type { ShaftLine } from '../line/types.js';
import { combineBands } from '../numerics/combine-bands.js';
import { lowestQuadraticRoots } from '../numerics/lowest-quadratic-roots.js';
import type { SpeedFrequencyMap, SpeedFrequencyOptions } from './types.js';
import { whirlSolver, type FactoredModel } from './whirl-solver.js';

const MOST_MODES = 100;
const MOST_MESHES = 8;

/**
 * Whirl frequencies of a line against shaft speed, forward and backward.
 *
 * At shaft speed Ω the frequencies are the positive ω of (K − ω²M ± ωΩG) φ = 0, + forward and − backward, with stiffness K,
 * mass and diametral inertia M, polar inertia G. Where a frequency meets the order line ω = nΩ lies a critical speed of
 * `criticalSpeeds`.
 *
 * @param line - a checked line
 * @param options - `speeds` Ω in rad/s, each at least 0, in any order; `modes`, 1 to 100, default 4
 * @returns for each mode, lowest first, its frequency in rad/s at every speed; none is missed: they are counted
 * @throws RangeError for an option out of its domain
 * @throws MechanismError if a part of the line is free to move
 * @remarks As for `criticalSpeeds`. Modes are numbered by frequency at each speed: where two would cross they change places.
 * @example
 * const map = speedFrequencyMap(exampleLine(), { speeds: [0, 800], modes: 1 });
 * map.forward[0][0] // → 784 rad/s
 * map.forward[0][1] // → 800 rad/s
 * map.backward[0][1] // → 767 rad/s
 * @see J. P. Den Hartog, "Mechanical Vibrations", 4th ed., §6.5; W. T. Thomson, "Theory of Vibration with Applications"
 */
export function speedFrequencyMap(
  line: ShaftLine,
  { speeds, modes = 4 }: SpeedFrequencyOptions,
): SpeedFrequencyMap {
  checkWhole('speedFrequencyMap: modes', modes, [1, MOST_MODES]);
  if (speeds.length === 0) throw refusal('speedFrequencyMap: speeds', 'one speed or more', speeds);
  const turned = Float64Array.from(speeds);
  turned.forEach((speed, i) => {
    checkNotNegative(`speedFrequencyMap: speeds[${i}]`, speed);
  });
  const solver = whirlSolver(line, 'speedFrequencyMap');
  let base = solver.modelFor(0, modes);
  for (let meshes = 1; ; meshes++) {
    const forward = branches(base, { speeds: turned, modes, turn: 1 });
    const backward = branches(base, { speeds: turned, modes, turn: -1 });
    const highest = forward.at(-1)?.reduce((most, value) => Math.max(most, value), 0) ?? 0;
    if (highest <= base.model.frequency || meshes === MOST_MESHES)
      return { speeds: turned, forward, backward };
    base = solver.modelFor(highest, modes);
  }
}

interface Branches {
  readonly speeds: Float64Array;
  readonly modes: number;
  /** +1 forward, −1 backward. */
  readonly turn: number;
}

/** One row for each mode; speed by speed upward, each from the modes of the one before. */
function branches({ model, factor }: FactoredModel, { speeds, modes, turn }: Branches): Float64Array[] {
  const rows = Array.from({ length: modes }, () => new Float64Array(speeds.length));
  const upward = Array.from(speeds.keys()).sort((i, j) => (speeds[i] ?? 0) - (speeds[j] ?? 0));
  const zero = combineBands(model.gyroscopic, model.gyroscopic, -1);
  let guess: readonly Float64Array[] = [];
  for (const place of upward) {
    const coupling = combineBands(zero, model.gyroscopic, turn * (speeds[place] ?? 0));
    const pencil = { stiffness: model.stiffness, factor, coupling, mass: model.mass };
    const { values, vectors } = lowestQuadraticRoots(pencil, { count: modes, guess });
    guess = vectors;
    rows.forEach((row, mode) => {
      row[place] = values[mode] ?? NaN;
    });
  }
  return rows;
}
