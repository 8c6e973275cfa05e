import type { ShaftLine } from '../line/types.js';
import { equivalentJoint } from './equivalent-joint.js';
import type { EquivalentJoint } from './types.js';

/** For each shaft of a line, the single joint that moves it as the chain before it does. */
export function shaftJoints(line: ShaftLine): EquivalentJoint[] {
  return line.shafts.map((_, shaft) =>
    equivalentJoint({
      ...line,
      shafts: line.shafts.slice(0, shaft + 1),
      joints: line.joints.slice(0, shaft),
    }),
  );
}
