import { jointBend } from './joint-bend.js';
import type { ShaftLine } from './types.js';

/** rad; below this two axes are one, and so are their port horizontals. */
const STRAIGHT = 1e-12;

/**
 * The sideways directions of a line laid straight: for each shaft the angle in rad from the first axis of the whole line's
 * frame to the shaft's own port horizontal.
 *
 * At each joint the normal of its plane is the same direction on both sides; the frame is carried over with it.
 */
export function developedFrame({ shafts, joints }: ShaftLine): number[] {
  let turn = 0;
  return shafts.map((shaft, index) => {
    const before = shafts[index - 1];
    if (!before || !joints[index - 1]) return turn;
    const { angle, normalBefore, normalAfter } = jointBend(before, shaft);
    if (angle > STRAIGHT) turn += normalBefore - normalAfter;
    return turn;
  });
}
