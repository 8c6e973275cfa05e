import { refusal } from '../internal/refuse.js';
import { jointBend } from './joint-bend.js';
import type { ShaftLine } from './types.js';

/** A joint and where its pins stand. */
export interface JointPhase {
  /** rad, between the two axes. */
  readonly angle: number;
  /** rad: its driving pin stands normal to its plane when the first shaft has turned by −phase. */
  readonly phase: number;
}

/** rad; below this two axes are one, and the plane that they span is rounding. */
const STRAIGHT = 1e-12;

/**
 * Where the driving pin of each universal joint stands: at θ + phase from the normal of its plane, θ the angle of the first
 * shaft, counted as in `speedRatio`; undefined for joints of other kinds.
 *
 * @remarks The pins are carried along the line as its exact motion carries them, but for the lead and lag of the joints
 *   ahead, tan²(β/2) rad at most.
 * @throws RangeError where a universal joint stands at 90° or more
 */
export function jointPhases(line: ShaftLine): (JointPhase | undefined)[] {
  let pin: number | undefined;
  return line.joints.map((joint, index) => {
    const from = line.shafts[index];
    const to = line.shafts[index + 1];
    if (!from || !to)
      throw refusal('jointPhases: line.shafts', 'one more than the joints', line.shafts.length);
    const { angle, normalBefore, normalAfter } = jointBend(from, to);
    if (joint.kind !== 'universal') {
      if (pin !== undefined) pin += normalAfter - normalBefore + to.yokeTwist;
      return undefined;
    }
    if (!(angle < Math.PI / 2))
      throw refusal(`jointPhases: angle of joints[${index}]`, 'below π/2 rad (90°)', angle);
    const phase = pin === undefined ? (angle <= STRAIGHT ? -normalBefore : 0) : pin - normalBefore;
    pin = phase + normalAfter + Math.PI / 2 + to.yokeTwist;
    return { angle, phase };
  });
}
