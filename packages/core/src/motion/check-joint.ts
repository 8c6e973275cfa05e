import { checkWhole } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import type { ShaftLine } from '../line/types.js';

/** @throws RangeError unless the line has a joint of this index. */
export function checkJoint(where: string, line: ShaftLine, joint: number): void {
  const last = line.joints.length - 1;
  if (last < 0) throw refusal(where, 'a joint of the line, which has none', joint);
  checkWhole(where, joint, [0, last]);
}
