import { developedFrame } from '../line/developed-frame.js';
import { jointBend } from '../line/joint-bend.js';
import { jointPhases } from '../line/joint-phases.js';
import type { ShaftLine } from '../line/types.js';

/** What a universal joint's couple does to the slopes of its two shafts, twice a turn, for a torque of 1 N·m. */
export interface JointCouple {
  readonly joint: number;
  /** ½ tan β, on the driving shaft. */
  readonly driving: number;
  /** ½ sin β, on the driven shaft, the other way. */
  readonly driven: number;
  /** rad, of both when the first joint's driving pin stands on the normal of its plane, or to port where it is straight. */
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
 * @throws RangeError where a universal joint stands at 90° or more
 * @see derived; the ends 0 and T tan β, T sin β of the range are in makers' design guides for cardan shafts
 */
export function jointCouples(line: ShaftLine): JointCouple[] {
  const frame = developedFrame(line);
  return jointPhases(line).flatMap((pins, joint) => {
    const from = line.shafts[joint];
    const to = line.shafts[joint + 1];
    if (!pins || !from || !to) return [];
    const normal = jointBend(from, to).normalBefore + (frame[joint] ?? 0);
    const { angle } = pins;
    return [
      { joint, driving: Math.tan(angle) / 2, driven: Math.sin(angle) / 2, phase: normal + 2 * pins.phase },
    ];
  });
}
