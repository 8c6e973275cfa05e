import { checkFinite } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';

export interface CoupleCourseOptions {
  /** rad between the two axes, from 0 to below π/2. */
  readonly angle: number;
  /** N·m on the driving side. */
  readonly torque: number;
  /** rad of the driving shaft, 0 with its pin normal to the plane of the axes. */
  readonly inputAngles: ArrayLike<number>;
}

/** Couples of one joint within a turn, N·m. */
export interface CoupleCourse {
  readonly driving: Float64Array;
  readonly driven: Float64Array;
}

/**
 * The secondary couples of one universal joint as it turns.
 *
 * T tan β |cos θ| on the driving shaft, T tan β |sin θ| √(cos²θ + cos²β sin²θ) on the driven one
 *
 * @param options - `angle` of the joint, `torque`, and the `inputAngles` to tell them at
 * @returns magnitudes in N·m at each angle
 * @throws RangeError where the angle is out of its domain or the torque is not finite
 * @remarks As {@link jointCouples}.
 * @example
 * const { driving, driven } = jointCoupleCourse({ angle: Math.PI / 18, torque: 10, inputAngles: [0, Math.PI / 2] });
 * driving // → [1.76327, 0.00000]
 * driven // → [0.00000, 1.73648]
 * @see {@link jointCouples}
 */
export function jointCoupleCourse({ angle, torque, inputAngles }: CoupleCourseOptions): CoupleCourse {
  if (!(angle >= 0 && angle < Math.PI / 2))
    throw refusal('jointCoupleCourse: angle', 'an angle in rad from 0 to below π/2', angle);
  checkFinite('jointCoupleCourse: torque', torque);
  const couple = Math.abs(torque) * Math.tan(angle);
  const driving = Float64Array.from(inputAngles, (input) => couple * Math.abs(Math.cos(input)));
  const driven = Float64Array.from(inputAngles, (input) => {
    const sine = Math.sin(input);
    return couple * Math.abs(sine) * Math.hypot(Math.cos(input), Math.cos(angle) * sine);
  });
  return { driving, driven };
}
