import type { Shaft, ShaftLine } from '../line/types.js';
import { nodeAt, type StaticBeam } from './build-static-beam.js';
import { noLoad, type BeamLoad } from './load-beam.js';
import { permissibleUnbalance } from './permissible-unbalance.js';

/** One load for each disc that is out of balance and each shaft that is bowed: each stands at an angle of its own. */
export function unbalanceLoads(
  line: ShaftLine,
  beam: StaticBeam,
  { speed, balanceGrade }: { readonly speed: number; readonly balanceGrade: number },
): BeamLoad[] {
  const square = speed ** 2;
  return line.shafts.flatMap((shaft, index) => [
    ...shaft.discs.map(({ at, mass, unbalance }) => {
      const load = noLoad(beam);
      const own = unbalance ?? permissibleUnbalance({ grade: balanceGrade, mass, speed });
      load.force[nodeAt(beam, index, at)] = own * square;
      return load;
    }),
    ...(shaft.runout ? [bowLoad(beam, { shaft, index, square })] : []),
  ]);
}

interface Bow {
  readonly shaft: Shaft;
  readonly index: number;
  /** Ω² */
  readonly square: number;
}

/** Half a wave of eccentricity over the shaft, half of the run-out in its middle. */
function bowLoad(beam: StaticBeam, { shaft, index, square }: Bow): BeamLoad {
  const load = noLoad(beam);
  const { length, outerDiameter, innerDiameter, material, runout = 0 } = shaft;
  const massPerLength = (Math.PI / 4) * (outerDiameter ** 2 - innerDiameter ** 2) * material.density;
  beam.pieces.forEach((piece, i) => {
    if (beam.shaft[piece.node] !== index) return;
    const from = ((beam.at[piece.node] ?? 0) * Math.PI) / length;
    const to = from + (piece.length * Math.PI) / length;
    const mean = ((runout / 2) * (Math.cos(from) - Math.cos(to))) / (to - from);
    load.spread[i] = massPerLength * mean * square;
  });
  return load;
}
