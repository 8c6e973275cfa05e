import { readFileSync } from 'node:fs';
import type { JointKind } from '@sternline/core';
import type { Turn } from '../line/line-of.js';

/** A chain of joints solved by loop closure in 40 digits and by following the pins: see chains.py beside the file. */
export interface Chain {
  readonly shafts: readonly Required<Turn>[];
  readonly joints: readonly JointKind[];
  readonly inputAngles: readonly number[];
  readonly outputAngle: readonly number[];
  readonly ratio: readonly number[];
  readonly min: number;
  readonly max: number;
  readonly orders: readonly number[];
}

export const chains = JSON.parse(
  readFileSync(new URL('../../reference/motion/chains.json', import.meta.url), 'utf8'),
) as readonly Chain[];
