import { solveLower } from '../numerics/solve-lower.js';
import { solveUpper } from '../numerics/solve-upper.js';
import type { StaticBeam } from './build-static-beam.js';

/** Loads on a beam in one plane, by node and by piece. */
export interface BeamLoad {
  /** N at each node. */
  readonly force: Float64Array;
  /** N·m at each node, with the slope of the line. */
  readonly moment: Float64Array;
  /** N/m along each piece. */
  readonly spread: Float64Array;
}

export interface BeamAnswer {
  /** N that each support pushes with. */
  readonly reactions: Float64Array;
  /** N·m of bending at the motor end of each piece, then at its other end. */
  readonly moments: Float64Array;
}

/** A beam without load. */
export function noLoad({ shaft, pieces }: StaticBeam): BeamLoad {
  return {
    force: new Float64Array(shaft.length),
    moment: new Float64Array(shaft.length),
    spread: new Float64Array(pieces.length),
  };
}

/** Reactions and bending moments of a loaded beam. */
export function loadBeam(beam: StaticBeam, load: BeamLoad): BeamAnswer {
  const moments = new Float64Array(2 * beam.pieces.length);
  if (isNone(load)) return { reactions: new Float64Array(beam.supports.length), moments };
  const deflection = solve(beam, load);
  const unbalanced = load.force.map((force) => -force);
  const bent = new Float64Array(4);
  for (let i = 0; i < beam.pieces.length; i++) {
    const piece = beam.pieces[i];
    if (!piece) continue;
    const { node, length, matrix } = piece;
    const even = load.spread[i] ?? 0;
    readDeflection(beam, node, { deflection, into: bent });
    const force = (even * length) / 2;
    const moment = (even * length ** 2) / 12;
    unbalanced[node] = (unbalanced[node] ?? 0) + rowTimes(matrix, 0, bent) - force;
    unbalanced[node + 1] = (unbalanced[node + 1] ?? 0) + rowTimes(matrix, 2, bent) - force;
    moments[2 * i] = rowTimes(matrix, 1, bent) - moment;
    moments[2 * i + 1] = rowTimes(matrix, 3, bent) + moment;
  }
  return { reactions: reactionsOf(beam, { unbalanced, deflection }), moments };
}

function isNone({ force, moment, spread }: BeamLoad): boolean {
  const none = (value: number): boolean => value === 0;
  return force.every(none) && moment.every(none) && spread.every(none);
}

function solve({ displacement, slope, pieces, factor }: StaticBeam, load: BeamLoad): Float64Array {
  const vector = new Float64Array(factor.size);
  const add = (row: number, value: number): void => {
    if (row >= 0) vector[row] = (vector[row] ?? 0) + value;
  };
  for (let node = 0; node < displacement.length; node++) {
    add(displacement[node] ?? -1, load.force[node] ?? 0);
    add(slope[node] ?? -1, load.moment[node] ?? 0);
  }
  pieces.forEach(({ node, length }, i) => {
    // the forces and moments at its ends that an even load amounts to
    const force = ((load.spread[i] ?? 0) * length) / 2;
    const moment = (force * length) / 6;
    add(displacement[node] ?? -1, force);
    add(slope[node] ?? -1, moment);
    add(displacement[node + 1] ?? -1, force);
    add(slope[node + 1] ?? -1, -moment);
  });
  solveLower(factor, vector);
  solveUpper(factor, vector);
  return vector;
}

function readDeflection(
  { displacement, slope }: StaticBeam,
  node: number,
  { deflection, into }: { readonly deflection: Float64Array; readonly into: Float64Array },
): void {
  const value = (row: number | undefined): number =>
    row === undefined || row < 0 ? 0 : (deflection[row] ?? 0);
  into[0] = value(displacement[node]);
  into[1] = value(slope[node]);
  into[2] = value(displacement[node + 1]);
  into[3] = value(slope[node + 1]);
}

function rowTimes(matrix: readonly number[], row: number, vector: Float64Array): number {
  let sum = 0;
  for (let j = 0; j < 4; j++) sum += (matrix[4 * row + j] ?? 0) * (vector[j] ?? 0);
  return sum;
}

interface Balance {
  /** N at each node that the pieces and loads there leave to the support. */
  readonly unbalanced: Float64Array;
  readonly deflection: Float64Array;
}

function reactionsOf(beam: StaticBeam, { unbalanced, deflection }: Balance): Float64Array {
  const { supports, displacement, shaft } = beam;
  return Float64Array.from(supports, ({ node, stiffness }) => {
    if (stiffness !== undefined) {
      const row = displacement[node] ?? -1;
      return row < 0 ? 0 : -stiffness * (deflection[row] ?? 0);
    }
    // the two nodes of a joint are one point, and so a support on one of them holds both
    const twins = [node - 1, node + 1].filter(
      (other) => shaft[other] !== undefined && shaft[other] !== shaft[node],
    );
    const together = [node, ...twins];
    const whole = together.reduce((sum, one) => sum + (unbalanced[one] ?? 0), 0);
    const sharing = supports.filter((one) => one.stiffness === undefined && together.includes(one.node));
    return whole / sharing.length;
  });
}
