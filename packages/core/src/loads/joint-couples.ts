import { checkFinite } from '../internal/checks.js';
import type { ShaftLine } from '../line/types.js';
import { jointPhases } from '../line/joint-phases.js';
import type { CoupleParts, JointCouple } from './types.js';

/**
 * Secondary couples of the universal joints: what a bent joint adds to the torque, square to its shafts.
 *
 * The cross carries a couple along its own normal alone. On the driving shaft that leaves T tan β |cos θ|, on the driven one
 * T tan β |sin θ| √(cos²θ + cos²β sin²θ), θ from the position with the driving pin normal to the plane of the axes: half
 * stands still, half turns at twice the shaft speed.
 *
 * @param line - a checked line
 * @param options - `torque` on the driving side in N·m
 * @returns for each joint, in order, couples in N·m: up to T tan β on the driving shaft, T sin β on the driven one; nought for
 *   joints that are not universal
 * @throws RangeError where the torque is not finite, or a universal joint stands at 90° or more
 * @remarks Massless cross without friction; the torque is taken to be the same at each joint, though that of a driven shaft
 *   varies by cos β to 1/cos β. What bushes have to hold of it: {@link supportReactions}.
 * @example
 * const [couple] = jointCouples(exampleLine(), { torque: 10 });
 * couple.driving.largest // → 2.493
 * couple.driven.largest // → 2.419
 * @see derived from the balance of the cross, and agrees with makers' catalogues of cardan shafts (greatest couples)
 */
export function jointCouples(line: ShaftLine, { torque }: { readonly torque: number }): JointCouple[] {
  checkFinite('jointCouples: torque', torque);
  const load = Math.abs(torque);
  return jointPhases(line).map((joint, index) => {
    const angle = joint?.angle ?? 0;
    const ahead = (load * Math.tan(angle)) / 2;
    const behind = (load * Math.sin(angle)) / 2;
    return {
      joint: index,
      angle,
      driving: parts(ahead, ahead, 2 * ahead),
      driven: parts(behind, ahead, 2 * behind),
    };
  });
}

function parts(mean: number, second: number, largest: number): CoupleParts {
  return { mean, second, largest };
}
