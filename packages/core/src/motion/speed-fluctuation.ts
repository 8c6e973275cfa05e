import { equivalentJoint } from './equivalent-joint.js';
import type { ShaftLine } from '../line/types.js';
import type { SpeedFluctuation } from './types.js';

const ORDERS = [2, 4, 6, 8] as const;

/**
 * How far the last shaft departs from even turning while the first turns evenly.
 *
 * With β the angle of the {@link equivalentJoint} and k = tan²(β/2): least ratio cos β, greatest 1/cos β, their
 * difference sin β tan β, ω₂/ω₁ = 1 + 2 Σ (−k)ⁿ cos 2nθ, and output angle = θ + Σ (−k)ⁿ/n sin 2nθ.
 *
 * @param line - a shaft line as `parseShaftLine` gives it
 * @returns ratios to the input speed: `min`, `max`, `degree` = max − min, in `orders` the amplitudes of orders
 *   2, 4, 6, 8 of the ratio over the input angle, and in `angleOrders`, rad, those of the output angle
 * @throws RangeError where a universal joint stands at 90° or more
 * @remarks Closed forms, for one joint and for any chain in space; joints without play and shafts stiff in twist.
 * @example
 * const held = [{ at: 0.01 }, { at: 0.09 }];
 * const shaft = { length: 0.1, outerDiameter: 0.005, material: 'stainless steel 304', supports: held };
 * const line = parseShaftLine({
 *   shafts: [shaft, { ...shaft, elevation: (15 * Math.PI) / 180 }],
 *   joints: [{ kind: 'universal' }],
 * });
 * speedFluctuation(line).degree // → 0.069350
 * speedFluctuation(line).max // → 1.035276
 * @see the series follows from 1/cos β = (1 + k)/(1 − k); derived
 */
export function speedFluctuation(line: ShaftLine): SpeedFluctuation {
  const { angle, cosine } = equivalentJoint(line);
  const k = Math.tan(angle / 2) ** 2;
  return {
    min: cosine,
    max: 1 / cosine,
    degree: Math.sin(angle) ** 2 / cosine,
    orders: ORDERS.map((order) => ({ order, amplitude: 2 * k ** (order / 2) })),
    angleOrders: ORDERS.map((order) => ({ order, amplitude: k ** (order / 2) / (order / 2) })),
  };
}
