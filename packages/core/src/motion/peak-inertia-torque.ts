import type { ShaftLine } from '../line/types.js';
import { peakSlope } from './peak-slope.js';
import { ratioAndSlope } from './ratio-and-slope.js';
import { shaftInertias } from './shaft-inertias.js';
import { shaftJoints } from './shaft-joints.js';
import type { EquivalentJoint, Medium } from './types.js';

/** Input angles looked at over half a turn, before the best of them is made exact. */
const GRID = 720;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * Peak of the torque that the fluctuation of a line forces on what a joint drives, over the square of the input speed.
 *
 * The power into the shafts behind the joint is Σ J ω α, so that the torque on shaft `at` is Ω² Σ J r r′ / r_at, with r
 * the speed ratio of each shaft and r′ its slope over the input angle. The largest backward one is as large as the
 * largest forward one where a single shaft is driven; of several the backward one is given, which unloads the pins.
 *
 * @param line - a shaft line
 * @param options - `joint`, its index; `at`, the shaft on which the torque is counted; `medium`
 * @returns kg·m², not negative
 */
export function peakInertiaTorque(
  line: ShaftLine,
  { joint, at, medium }: { readonly joint: number; readonly at: number; readonly medium: Medium },
): number {
  const chain = shaftJoints(line);
  const inertias = shaftInertias(line, medium);
  const driven = chain.flatMap((turning, shaft) =>
    shaft > joint ? [{ turning, inertia: inertias[shaft] ?? 0 }] : [],
  );
  const counted = chain[at];
  if (!counted) return 0;
  const backward = (angle: number): number => {
    const power = driven.reduce((sum, { turning, inertia }) => {
      const { ratio, slope } = ratioAndSlope(turning, angle);
      return sum + inertia * ratio * slope;
    }, 0);
    return -power / ratioAndSlope(counted, angle).ratio;
  };
  return Math.max(0, highest(backward, startingAngles(driven.map(({ turning }) => turning))));
}

/** An even grid, and where each shaft loses speed fastest: near 90° its peak is narrower than the grid. */
function startingAngles(chain: readonly EquivalentJoint[]): number[] {
  const even = Array.from({ length: GRID }, (_, i) => (i * Math.PI) / GRID);
  return [...even, ...chain.map((joint) => 2 * joint.phase - peakSlope(joint).inputAngle)];
}

/** The greatest value near the best of some starting angles, by golden section. */
function highest(value: (angle: number) => number, starts: readonly number[]): number {
  let best = { angle: 0, value: -Infinity };
  for (const angle of starts) {
    const found = value(angle);
    if (found > best.value) best = { angle, value: found };
  }
  let low = best.angle - Math.PI / GRID;
  let high = best.angle + Math.PI / GRID;
  while (high - low > 1e-9) {
    const left = high - GOLDEN * (high - low);
    const right = low + GOLDEN * (high - low);
    if (value(left) > value(right)) high = right;
    else low = left;
  }
  return Math.max(best.value, value((low + high) / 2));
}
