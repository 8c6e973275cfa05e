import { checkPositive } from '../internal/checks.js';
import { jointAngles } from '../line/joint-angles.js';
import type { ShaftLine } from '../line/types.js';
import { peakSlope } from './peak-slope.js';
import { shaftJoints } from './shaft-joints.js';
import type { AngularAcceleration, EquivalentJoint, ShaftAcceleration } from './types.js';

const ORDERS = [2, 4, 6, 8] as const;

/**
 * Angular acceleration of every shaft while the first turns evenly.
 *
 * α₂ = ω₁² cos β sin²β sin 2θ / (1 − sin²β sin²θ)², greatest where cos 2θ = −4s / (2 − s + √((2 − s)² + 8s²)), s = sin²β;
 * its order 2n has the amplitude 4n kⁿ ω₁², k = tan²(β/2). Each shaft turns as the equivalent joint of the chain before it.
 *
 * @param line - a shaft line as `parseShaftLine` gives it
 * @param options - `speed` of the first shaft in rad/s, greater than 0
 * @returns peaks in rad/s² and the input angles in rad at which they stand, for the last shaft, for every shaft (an
 *   inner shaft swings even where its line cancels), and for every universal joint by itself
 * @throws RangeError where the speed is not greater than 0, or a universal joint stands at 90° or more
 * @remarks Exact, in closed form. Shafts stiff in twist and a motor that turns evenly: a light rotor gives way, and
 *   the real figures are lower. Input angles are counted as in {@link speedRatio}.
 * @example
 * const held = [{ at: 0.01 }, { at: 0.09 }];
 * const shaft = { length: 0.1, outerDiameter: 0.005, material: 'stainless steel 304', supports: held };
 * const line = parseShaftLine({
 *   shafts: [shaft, { ...shaft, elevation: (20 * Math.PI) / 180 }],
 *   joints: [{ kind: 'universal' }],
 * });
 * angularAcceleration(line, { speed: 157.0796 }).peak // → 3083.4
 * @see R. S. Khurmi and J. K. Gupta, "Theory of Machines", Hooke's joint; the root there is approximate, this one derived
 */
export function angularAcceleration(
  line: ShaftLine,
  { speed }: { readonly speed: number },
): AngularAcceleration {
  checkPositive('angularAcceleration: speed', speed);
  const joints = shaftJoints(line);
  const shafts = joints.map((joint, shaft) => shaftAcceleration(joint, shaft, speed));
  const { equivalentAngle = 0, peak = 0, inputAngle = 0 } = shafts.at(-1) ?? {};
  const k = Math.tan(equivalentAngle / 2) ** 2;
  return {
    equivalentAngle,
    peak,
    inputAngle,
    orders: ORDERS.map((order) => ({ order, amplitude: 2 * order * k ** (order / 2) * speed ** 2 })),
    shafts,
    joints: jointAngles(line).flatMap((angle, joint) => {
      if (line.joints[joint]?.kind !== 'universal') return [];
      const alone = { angle, cosine: Math.cos(angle), phase: 0 };
      return [{ joint, angle, peak: peakSlope(alone).slope * speed ** 2 }];
    }),
  };
}

function shaftAcceleration(joint: EquivalentJoint, shaft: number, speed: number): ShaftAcceleration {
  const { slope, inputAngle } = peakSlope(joint);
  return { shaft, equivalentAngle: joint.angle, peak: slope * speed ** 2, inputAngle };
}
