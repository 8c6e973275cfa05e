import { refusal } from '../internal/refuse.js';
import { jointBend } from '../line/joint-bend.js';
import type { ShaftLine } from '../line/types.js';

/** rad; below this two axes are one, and the plane that they span is rounding. */
const STRAIGHT = 1e-12;

/** One universal joint of a chain, and how far its driving pin is turned out of the plane that would follow the last. */
export interface PinTurn {
  /** Index of the joint in the line. */
  readonly joint: number;
  /** rad, between the two axes. */
  readonly angle: number;
  /**
   * rad, about the shaft before the joint: from the normal of the joint's plane to its driving pin, at the instant when
   * the driven pin of the universal joint before stands on the normal of its own plane turned by a quarter.
   */
  readonly turn: number;
}

/**
 * The universal joints of a line as bends and the turns between them, which is all that its turning depends on.
 *
 * A rigid or flexible joint carries the pin over about the normal of its plane, without turning it about the shaft.
 *
 * @param line - a shaft line
 * @param caller - the public function, for its refusals
 * @returns the universal joints from the motor end
 */
export function pinTurns(line: ShaftLine, caller: string): PinTurn[] {
  const turns: PinTurn[] = [];
  let pin: number | undefined;
  line.joints.forEach((joint, index) => {
    const from = line.shafts[index];
    const to = line.shafts[index + 1];
    if (!from || !to) throw refusal(`${caller}: line.shafts`, 'one more than the joints', line.shafts.length);
    const { angle, normalBefore, normalAfter } = jointBend(from, to);
    if (joint.kind === 'universal') {
      const start = angle <= STRAIGHT ? -normalBefore : 0;
      turns.push({ joint: index, angle, turn: pin === undefined ? start : pin - normalBefore });
      pin = normalAfter + Math.PI / 2 + to.yokeTwist;
    } else if (pin !== undefined) {
      pin += normalAfter - normalBefore + to.yokeTwist;
    }
  });
  return turns;
}
