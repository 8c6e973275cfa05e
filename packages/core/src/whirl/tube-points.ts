import type { ShaftLine } from '../line/types.js';
import type { WhirlModel } from './build-whirl-model.js';
import { locatePoint, type LocatedPoint } from './locate-point.js';

/** Points looked at in each element: a bending wave has no more than a hair between them. */
const PIECES = 4;

/** Where a shaft might touch its tube. */
export interface TubePoints {
  readonly shaft: number;
  /** m, radial. */
  readonly clearance: number;
  readonly points: readonly LocatedPoint[];
}

/**
 * Points along each shaft that turns in a tube, between its outermost supports, or over its length where it has fewer than
 * two: the tube ends at its bushes, and what hangs over is free.
 */
export function tubePoints(line: ShaftLine, model: WhirlModel): TubePoints[] {
  const { mesh } = model;
  return line.shafts.flatMap(({ tubeBore, outerDiameter, supports, length }, shaft) => {
    if (tubeBore === undefined) return [];
    const places = supports.map(({ at }) => at);
    const apart = new Set(places).size > 1;
    const [from, to] = apart ? [Math.min(...places), Math.max(...places)] : [0, length];
    const points: LocatedPoint[] = [];
    for (let node = mesh.firstNode[shaft] ?? 0; node + 1 < (mesh.firstNode[shaft + 1] ?? 0); node++) {
      const [start, end] = [mesh.at[node] ?? 0, mesh.at[node + 1] ?? 0];
      for (let k = 0; k < PIECES; k++) {
        const at = start + ((end - start) * k) / PIECES;
        if (at >= from && at <= to) points.push(locatePoint(model, { shaft, at }));
      }
    }
    points.push(locatePoint(model, { shaft, at: to }));
    return [{ shaft, clearance: (tubeBore - outerDiameter) / 2, points }];
  });
}
