import { jointBend } from '../line/joint-bend.js';
import type { ShaftLine } from '../line/types.js';

/** What a universal joint's couple does to the slopes of its two shafts, twice a turn, for a torque of 1 N·m. */
export interface JointCouple {
  readonly joint: number;
  /** ½ tan β, on the driving shaft. */
  readonly driving: number;
  /** ½ sin β, on the driven shaft, the other way. */
  readonly driven: number;
  /** rad, of both when the first joint's driving pin stands on the normal of its plane. */
  readonly phase: number;
}

/**
 * The turning couples of the universal joints of a line.
 *
 * A cross without friction passes on a couple along its normal only. Across the driving shaft that leaves
 * T tan β (e − (e·p) p), with p its pin and e towards the driven shaft: between 0 and T tan β, twice a turn. It is a steady
 * couple of half that size and another, ½ T tan β, that turns forward at twice the shaft's speed, with nothing turning
 * backward. So too across the driven shaft with T sin β, to the order β³.
 *
 * @remarks For a torque that does not pulse. Frames are carried along the line without turning about the shafts.
 * @see derived; the ends 0 and T tan β, T sin β of the range are in makers' design guides for cardan shafts
 */
export function jointCouples(line: ShaftLine): JointCouple[] {
  const couples: JointCouple[] = [];
  let pin: number | undefined;
  let turned = 0;
  line.joints.forEach((joint, index) => {
    const from = line.shafts[index];
    const to = line.shafts[index + 1];
    if (!from || !to) return;
    const { angle, normalBefore, normalAfter } = jointBend(from, to);
    const own = pin ?? normalBefore;
    if (joint.kind === 'universal') {
      const towards = normalBefore - Math.PI / 2;
      // a couple along an axis bends the shaft a quarter turn behind it
      const phase = 2 * (own - turned) - (towards - turned) - Math.PI / 2;
      couples.push({ joint: index, driving: Math.tan(angle) / 2, driven: Math.sin(angle) / 2, phase });
      pin = normalAfter + Math.PI / 2 + to.yokeTwist;
    } else if (pin !== undefined) {
      pin += normalAfter - normalBefore + to.yokeTwist;
    }
    turned += normalAfter - normalBefore;
  });
  return couples;
}
