import { checkWhole } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import type { ShaftLine } from '../line/types.js';
import { beamElement } from './beam-element.js';
import type { WhirlModel } from './build-whirl-model.js';
import { checkExcitation } from './check-excitation.js';
import { elementRows } from './element-rows.js';
import { locatePoint } from './locate-point.js';
import type {
  DiscShare,
  JointShare,
  ModeStiffening,
  ModeStiffeningOptions,
  SegmentShare,
  ShaftShare,
  SupportShare,
} from './types.js';
import { wetDiscs } from './wet-discs.js';
import { whirlSolver } from './whirl-solver.js';

const MOST_MODES = 100;

/**
 * What to stiffen and what to lighten for a whirl mode: the share of each part of the line in its strain and kinetic energy.
 *
 * By Rayleigh's quotient a part stiffer by dk/k and heavier by dm/m moves the critical speed by
 * dω/ω = ½ (strain · dk/k − kinetic · dm/m). A shaft's strain share goes with its EI and κGA, its kinetic share with its
 * mass; more diameter raises the first with its fourth power and the second with its square.
 *
 * @param line - a checked line
 * @param options - `order` and `whirl` as for `criticalSpeeds`; `mode`, 1 for the lowest, default 1
 * @returns shares of 1, and for each support what holding the slope there would bring
 * @throws RangeError for an option out of its domain, or a mode that the line does not have
 * @throws MechanismError if a part of the line is free to move
 * @remarks First order: true for small changes. The kinetic shares hold the gyroscopic part, −G/n forward and +G/n backward.
 * @example
 * const { shafts, discs, supports } = modeStiffening(exampleLine());
 * shafts[1].strain // → 0.94
 * discs[0].kinetic // → 0.28
 * @see W. T. Thomson, "Theory of Vibration with Applications", §11.1 (Rayleigh); R. L. Fox and M. P. Kapoor, "Rates of change of
 *   eigenvalues and eigenvectors", AIAA Journal 6(12), 1968, 2426–2429
 */
export function modeStiffening(line: ShaftLine, options: ModeStiffeningOptions = {}): ModeStiffening {
  const { mode = 1 } = options;
  checkWhole('modeStiffening: mode', mode, [1, MOST_MODES]);
  const pencil = checkExcitation('modeStiffening: ', { ...options, count: mode });
  const { model, pairs } = whirlSolver(line, 'modeStiffening').solve(pencil);
  const vector = pairs.vectors[mode - 1];
  if (!vector)
    throw refusal('modeStiffening: mode', `at most ${pairs.vectors.length}, as many as there are`, mode);
  const square = pairs.values[mode - 1] ?? 0;
  const turning = (pencil.whirl === 'forward' ? -1 : 1) / pencil.order;
  const moved: MovedLine = { line, model, vector, square, turning };
  return {
    speed: Math.sqrt(square) / pencil.order,
    shafts: line.shafts.map((_, shaft) => shaftShare(moved, shaft)),
    supports: line.shafts.flatMap((_, shaft) => supportShares(moved, shaft)),
    joints: line.joints.map((_, joint) => jointShare(moved, joint)),
    discs: line.shafts.flatMap((_, shaft) => discShares(moved, shaft)),
  };
}

interface MovedLine {
  readonly line: ShaftLine;
  readonly model: WhirlModel;
  /** φ with φᵀ K φ = 1, so that ω² φᵀ B φ = 1. */
  readonly vector: Float64Array;
  /** ω² */
  readonly square: number;
  /** Factor of G in B = M ∓ G/n. */
  readonly turning: number;
}

function shaftShare({ model, vector, square, turning }: MovedLine, shaft: number): ShaftShare {
  const { mesh, freedoms } = model;
  const section = mesh.sections[shaft];
  const segments: SegmentShare[] = [];
  for (
    let node = mesh.firstNode[shaft] ?? 0;
    section && node + 1 < (mesh.firstNode[shaft + 1] ?? 0);
    node++
  ) {
    const [from, to] = [mesh.at[node] ?? 0, mesh.at[node + 1] ?? 0];
    const element = beamElement(section, to - from);
    const motion = elementRows(freedoms, node).map((row) => vector[row] ?? 0);
    const kinetic = energy(element.mass, motion) + turning * energy(element.gyroscopic, motion);
    segments.push({ from, to, strain: energy(element.stiffness, motion), kinetic: square * kinetic });
  }
  const sum = (share: 'strain' | 'kinetic'): number => segments.reduce((total, one) => total + one[share], 0);
  return { shaft, strain: sum('strain'), kinetic: sum('kinetic'), segments };
}

/** xᵀ A x */
function energy(entries: readonly number[], x: readonly number[]): number {
  return x.reduce(
    (total, own, i) =>
      total + own * x.reduce((row, other, j) => row + (entries[i * x.length + j] ?? 0) * other, 0),
    0,
  );
}

function supportShares({ line, model, vector }: MovedLine, shaft: number): SupportShare[] {
  const { supports = [] } = line.shafts[shaft] ?? {};
  return supports.map(({ at, radialStiffness = 0, angularStiffness = 0 }, support) => {
    const { displacement, slope } = motionAt(model, vector, { shaft, at });
    return {
      shaft,
      support,
      strain: radialStiffness * displacement ** 2 + angularStiffness * slope ** 2,
      slopeGain: slope ** 2 / 2,
    };
  });
}

function motionAt(
  model: WhirlModel,
  vector: Float64Array,
  place: { readonly shaft: number; readonly at: number },
): { readonly displacement: number; readonly slope: number } {
  const { rows, shape } = locatePoint(model, place);
  const part = (weights: readonly number[]): number =>
    rows.reduce((sum, row, i) => sum + (weights[i] ?? 0) * (vector[row] ?? 0), 0);
  return { displacement: part(shape.displacement), slope: part(shape.slope) };
}

function jointShare({ line, model, vector, square }: MovedLine, joint: number): JointShare {
  const { mass = 0, kind = 'universal', bendingStiffness = 0 } = line.joints[joint] ?? {};
  const { mesh, freedoms } = model;
  const after = mesh.firstNode[joint + 1] ?? 0;
  const bend = (vector[freedoms.slope[after] ?? -1] ?? 0) - (vector[freedoms.slope[after - 1] ?? -1] ?? 0);
  const displacement = vector[freedoms.displacement[after] ?? -1] ?? 0;
  return {
    joint,
    strain: kind === 'flexible' ? bendingStiffness * bend ** 2 : 0,
    kinetic: square * mass * displacement ** 2,
  };
}

function discShares({ line, model, vector, square, turning }: MovedLine, shaft: number): DiscShare[] {
  return wetDiscs(line, shaft).map(({ at, mass, diametralInertia, polarInertia }, disc) => {
    const { displacement, slope } = motionAt(model, vector, { shaft, at });
    const translation = square * mass * displacement ** 2;
    const inertia = square * (diametralInertia + turning * polarInertia) * slope ** 2;
    return { shaft, disc, kinetic: translation + inertia, mass: translation, inertia };
  });
}
