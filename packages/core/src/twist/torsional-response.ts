import { checkNotNegative, checkPositive } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import type { ShaftLine } from '../line/types.js';
import { equivalentJoint } from '../motion/equivalent-joint.js';
import type { EquivalentJoint } from '../motion/types.js';
import { magnitude, minus, plus, scaled, times, type Complex } from '../numerics/complex.js';
import { solveTridiagonal } from '../numerics/solve-tridiagonal.js';
import { buildTwistModel, type TwistModel } from './build-twist-model.js';
import { dampedBars, type DampedBar } from './damped-bars.js';
import type { TorsionalOrder, TorsionalResponse, TorsionalResponseOptions } from './types.js';

/** Orders of the joints; the fourth term, order 8, is below k³/4 of the first. */
const JOINT_ORDERS = [2, 4, 6] as const;
/** Our choice, no source: a propeller behind a hull has 5 to 15 % of pulsation in torque (from memory). */
const BLADE_SHARE = 0.1;
/** Our choice, no source: a line of steel with plain joints; a propeller in water adds some. */
const DAMPING = 0.02;

/**
 * How a line swings in twist at one speed, driven by its universal joints and by the blades of its propeller.
 *
 * A joint at β makes its output lead by Σ (−k)ᵐ/m · sin 2m(Ωt + ψ), k = tan²(β/2), and so does any chain, as its
 * {@link equivalentJoint}. All that lies behind would have to follow; its inertia does not, and the line winds up: with E the
 * lead of each shaft over the first and φ what the line adds by twisting, D(ω) φ = F − D(ω) E for the shafts and what sits on them, ω = nΩ; the joints' springs feel φ alone. F
 * is the blades' torque on the propeller.
 *
 * @param line - a checked line
 * @param options - `speed` in rad/s; `torque`, the mean, in N·m: without it the blades push nothing; `bladeShare`, amplitude
 *   of the blades' torque over the mean, default 0.1; `damping` ζ of every mode, above 0 and below 1, default 0.02
 * @returns amplitudes of angle (rad) and torque (N·m) along the line for each order, and for each shaft and joint the swing
 *   of the torque, all orders added as if they peaked together
 * @throws RangeError for an option out of its domain, or where a universal joint stands at 90° or more
 * @remarks Small swings about even turning; joints without play: where the swing exceeds the mean torque the pins part and
 *   rattle instead. Damping is a loss in every spring, which gives each mode the share ζ at its resonance. The pulsing of
 *   the motor's own torque is left out.
 * @example
 * const { jointSwing, orders } = torsionalResponse(exampleLine(), { speed: 345 });
 * orders.map(({ order }) => order) // → [2, 4, 6]
 * jointSwing[0] // → 0.044
 * @see W. T. Thomson, "Theory of Vibration with Applications", §3.5 (support motion) and §4.2 (structural damping); the
 *   forcing is derived
 */
export function torsionalResponse(line: ShaftLine, options: TorsionalResponseOptions): TorsionalResponse {
  const { speed, torque = 0, bladeShare = BLADE_SHARE, damping = DAMPING } = options;
  checkPositive('torsionalResponse: speed', speed);
  checkNotNegative('torsionalResponse: torque', torque);
  checkNotNegative('torsionalResponse: bladeShare', bladeShare);
  if (!(damping > 0 && damping < 1))
    throw refusal('torsionalResponse: damping', 'a share of critical above 0 and below 1', damping);
  const excitations = lineExcitations(line, torque * bladeShare);
  const highest = Math.max(1, ...excitations.map(({ order }) => order));
  const model = buildTwistModel(line, { frequency: highest * speed });
  const orders = excitations.map((one) => respond(model, one, { frequency: one.order * speed, damping }));
  const { shaft, at, station } = model.places;
  return {
    shaft,
    at,
    station,
    orders,
    shaftSwing: swingOfShafts(line, model, orders),
    jointSwing: swingOfJoints(line, model, orders),
  };
}

interface TwistExcitation {
  readonly order: number;
  readonly source: 'joints' | 'blades';
  /** rad, the error of all joints ahead of each shaft. */
  readonly lead: readonly Complex[];
  /** N·m on the propeller. */
  readonly push: number;
}

function lineExcitations(line: ShaftLine, push: number): TwistExcitation[] {
  const ahead = jointsAhead(line);
  const driven = ahead.some(({ angle }) => angle > 0);
  const found: TwistExcitation[] = driven
    ? JOINT_ORDERS.map((order) => ({ order, source: 'joints', lead: leads(ahead, order), push: 0 }))
    : [];
  if (line.propeller && push > 0)
    found.push({ order: line.propeller.blades, source: 'blades', lead: line.shafts.map(() => ZERO), push });
  return found;
}

/** The one joint that stands for all those ahead of each shaft, exact for any chain. */
function jointsAhead(line: ShaftLine): EquivalentJoint[] {
  return line.shafts.map((_, i) =>
    equivalentJoint({ ...line, shafts: line.shafts.slice(0, i + 1), joints: line.joints.slice(0, i) }),
  );
}

function leads(ahead: readonly EquivalentJoint[], order: number): Complex[] {
  return ahead.map(({ angle, phase }) => {
    const size = ((-(Math.tan(angle / 2) ** 2)) ** (order / 2) * 2) / order;
    return [size * Math.cos(order * phase), -size * Math.sin(order * phase)];
  });
}

interface Swing {
  readonly frequency: number;
  readonly damping: number;
}

function respond(model: TwistModel, excitation: TwistExcitation, swing: Swing): TorsionalOrder {
  const { order, source, lead, push } = excitation;
  const square = swing.frequency ** 2;
  const bars = dampedBars(model, { frequency: swing.frequency, lossFactor: 2 * swing.damping });
  const motion = solveMotion(model, { bars, square, excitation });
  const { places, freedom, lumps, propeller } = model;
  const count = freedom.length;
  const whole = (node: number): Complex =>
    plus(motion[freedom[node] ?? 0] ?? ZERO, lead[places.shaft[node] ?? 0] ?? ZERO);
  const angle = new Float64Array(count);
  const torque = new Float64Array(count);
  let arriving = ZERO;
  for (let node = 0; node < count; node++) {
    const own = whole(node);
    const inertial = scaled(own, square * (lumps[node] ?? 0));
    const leaving = minus(arriving, plus(inertial, node === propeller ? [push, 0] : ZERO));
    angle[node] = magnitude(own);
    torque[node] = magnitude(leaving);
    const bar = places.shaft[node + 1] === places.shaft[node] ? bars[node] : undefined;
    arriving = bar ? plus(times(bar.same, whole(node + 1)), times(bar.other, own)) : leaving;
  }
  return { order, source, angle, torque };
}

interface MotionParts {
  readonly bars: readonly (DampedBar | undefined)[];
  readonly square: number;
  readonly excitation: TwistExcitation;
}

/** φ: D φ = F − D E, where the springs of the joints do not feel E. */
function solveMotion(model: TwistModel, { bars, square, excitation }: MotionParts): Complex[] {
  const { places, freedom, freedoms, lumps, propeller } = model;
  const zeros = (): Complex[] => Array.from({ length: freedoms }, () => ZERO);
  const system = { own: zeros(), across: zeros(), load: zeros() };
  const add = (list: Complex[], row: number, value: Complex): void => {
    list[row] = plus(list[row] ?? ZERO, value);
  };
  bars.forEach((bar, node) => {
    if (!bar) return;
    add(system.across, freedom[node + 1] ?? 0, bar.other);
    // 0 for a spring, so that a joint's own spring does not feel the lead
    const held = times(plus(bar.same, bar.other), excitation.lead[places.shaft[node] ?? 0] ?? ZERO);
    for (const end of [node, node + 1]) {
      add(system.own, freedom[end] ?? 0, bar.same);
      add(system.load, freedom[end] ?? 0, scaled(held, -1));
    }
  });
  freedom.forEach((row, node) => {
    const inertial = square * (lumps[node] ?? 0);
    add(system.own, row, [-inertial, 0]);
    add(system.load, row, scaled(excitation.lead[places.shaft[node] ?? 0] ?? ZERO, inertial));
    if (node === propeller) add(system.load, row, [excitation.push, 0]);
  });
  return solveTridiagonal(system);
}

const ZERO: Complex = [0, 0];

/** N·m, the largest in each shaft: at the ends of its bars, where a swing of under half a wave has its largest. */
function swingOfShafts(
  line: ShaftLine,
  { places }: TwistModel,
  orders: readonly TorsionalOrder[],
): Float64Array {
  return summed(line.shafts.length, orders, ({ torque }, largest) => {
    places.shaft.forEach((shaft, node) => {
      if (places.shaft[node + 1] === shaft) largest[shaft] = Math.max(largest[shaft] ?? 0, torque[node] ?? 0);
    });
  });
}

function swingOfJoints(
  line: ShaftLine,
  { places }: TwistModel,
  orders: readonly TorsionalOrder[],
): Float64Array {
  return summed(line.joints.length, orders, ({ torque }, here) => {
    places.shaft.forEach((shaft, node) => {
      if (shaft < here.length && places.shaft[node + 1] !== shaft) here[shaft] = torque[node] ?? 0;
    });
  });
}

function summed(
  count: number,
  orders: readonly TorsionalOrder[],
  read: (order: TorsionalOrder, into: Float64Array) => void,
): Float64Array {
  const total = new Float64Array(count);
  for (const order of orders) {
    const own = new Float64Array(count);
    read(order, own);
    for (let i = 0; i < count; i++) total[i] = (total[i] ?? 0) + (own[i] ?? 0);
  }
  return total;
}
