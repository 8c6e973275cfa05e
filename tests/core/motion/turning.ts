import { readFileSync } from 'node:fs';
import type { JointKind, ShaftLine } from '@sternline/core';
import { lineOf, type Turn } from '../line/line-of.js';

/** Accelerations, inertia torques and best twists found by following the pins: see turning.py beside the file. */
interface Turning {
  readonly chains: readonly { readonly shafts: readonly Turn[]; readonly joints: readonly JointKind[] }[];
  readonly accelerations: readonly (readonly { readonly peak: number; readonly inputAngle: number }[])[];
  readonly inertia: readonly {
    readonly discs: readonly number[];
    readonly joint: number;
    readonly behindJoint: number;
    readonly atPropeller: number;
  }[];
  readonly phases: readonly { readonly shafts: readonly Turn[]; readonly degreeAtBest: number }[];
}

export const turning = JSON.parse(
  readFileSync(new URL('../../reference/motion/turning.json', import.meta.url), 'utf8'),
) as Turning;

/** The same line with a disc of this polar inertia on each shaft. */
export function withDiscs(line: ShaftLine, inertias: readonly number[]): ShaftLine {
  return {
    ...line,
    shafts: line.shafts.map((shaft, i) => ({
      ...shaft,
      discs: [
        {
          name: 'disc',
          at: 0.05,
          mass: 0,
          polarInertia: inertias[i] ?? 0,
          diametralInertia: (inertias[i] ?? 0) / 2,
        },
      ],
    })),
  };
}

/** A line of one universal joint at so many degrees. */
export const single = (angle: number): ShaftLine => lineOf([{}, { elevation: (angle * Math.PI) / 180 }]);
