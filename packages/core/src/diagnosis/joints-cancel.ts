import type { ShaftLine } from '../line/types.js';
import { speedFluctuation } from '../motion/speed-fluctuation.js';

/** Second order of the speed ratio below which joints cancel, as good as they can be built. Our choice. */
const CANCELLED = 0.0005;

/** Whether a line of two universal joints or more turns evenly as described. */
export function jointsCancel(line: ShaftLine): boolean {
  const joints = line.joints.filter(({ kind }) => kind === 'universal').length;
  const twice = speedFluctuation(line).orders.find(({ order }) => order === 2)?.amplitude ?? 0;
  return joints > 1 && twice < CANCELLED;
}
