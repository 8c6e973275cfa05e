import { checkFinite, checkNotNegative, checkPositive, checkWhole } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import type { ShaftLine } from '../line/types.js';
import type { ComplexVector } from '../numerics/complex-vector.js';
import type { WhirlModel } from './build-whirl-model.js';
import { dampedSystem } from './damped-system.js';
import type { LocatedPoint } from './locate-point.js';
import { tubePoints, type TubePoints } from './tube-points.js';
import type { Whirl, WhirlDamping, WhirlExcitation } from './types.js';
import { whirlLoads, type WhirlLoad } from './whirl-loads.js';
import { whirlSolver } from './whirl-solver.js';

/** Our choice, no source: plain bushes, and a propeller in water or not. */
const MODAL_DAMPING = 0.02;
/** Modes that the mesh carries at least. */
const MODES = 8;

export interface SteadyOptions {
  readonly damping?: WhirlDamping | undefined;
  readonly excitations?: readonly WhirlExcitation[] | undefined;
  /** rad/s, the highest speed that will be asked for. */
  readonly fastest: number;
}

/** One order and whirl at one speed. */
export interface SteadyOrder {
  readonly order: number;
  readonly whirl: Whirl;
  /** Over the unknowns of the model. */
  readonly motion: ComplexVector;
}

export interface SteadyWhirl {
  readonly model: WhirlModel;
  readonly tubes: readonly TubePoints[];
  /** False where the excitations push nowhere on this line. */
  readonly driven: boolean;
  readonly at: (speed: number) => SteadyOrder[];
}

/** The line made ready to give its steady whirl at any speed; checks what `whirlResponse` and `contactSpeed` share. */
export function steadyWhirl(line: ShaftLine, options: SteadyOptions, caller: string): SteadyWhirl {
  const { damping = {}, excitations = [{ kind: 'unbalance' }, { kind: 'bow' }], fastest } = options;
  const { modal = MODAL_DAMPING, bushes = 0 } = damping;
  if (!(modal > 0 && modal < 1))
    throw refusal(`${caller}: damping.modal`, 'a share of critical above 0 and below 1', modal);
  checkNotNegative(`${caller}: damping.bushes`, bushes);
  excitations.forEach((one, i) => {
    checkLoad(line, one, `${caller}: excitations[${i}]`);
  });
  const highest = Math.max(1, ...excitations.map((one) => (one.kind === 'force' ? one.order : 2)));
  const base = whirlSolver(line, caller).modelFor(highest * fastest, MODES);
  const loads = whirlLoads(line, base.model, excitations);
  const solver = dampedSystem(line, base, { modal, bushes });
  const at = (speed: number): SteadyOrder[] =>
    loads.map((load) => {
      const { order, whirl } = load;
      const motion = loadAt(load, speed);
      solver({ speed, frequency: order * speed, turn: whirl === 'forward' ? 1 : -1 })(motion);
      return { order, whirl, motion };
    });
  return { model: base.model, tubes: tubePoints(line, base.model), driven: loads.some(pushes), at };
}

function loadAt({ base, graded, inertial }: WhirlLoad, speed: number): ComplexVector {
  const part = (of: keyof ComplexVector): Float64Array =>
    base[of].map((value, i) => value + speed * (graded[of][i] ?? 0) + speed ** 2 * (inertial[of][i] ?? 0));
  return { real: part('real'), imaginary: part('imaginary') };
}

function pushes({ base, graded, inertial }: WhirlLoad): boolean {
  return [base, graded, inertial].some(({ real, imaginary }) =>
    [real, imaginary].some((part) => part.some((value) => value !== 0)),
  );
}

function checkLoad(line: ShaftLine, excitation: WhirlExcitation, where: string): void {
  if (excitation.kind === 'joints') {
    checkFinite(`${where}.torque`, excitation.torque);
    if (excitation.torqueSpeed !== undefined) checkPositive(`${where}.torqueSpeed`, excitation.torqueSpeed);
  }
  if (excitation.kind !== 'force') return;
  checkWhole(`${where}.shaft`, excitation.shaft, [0, line.shafts.length - 1]);
  checkFinite(`${where}.force`, excitation.force);
  checkPositive(`${where}.order`, excitation.order);
  const length = line.shafts[excitation.shaft]?.length ?? 0;
  if (!(excitation.at >= 0 && excitation.at <= length))
    throw refusal(`${where}.at`, `from 0 to ${length} (the shaft's length)`, excitation.at);
}

/** m, the largest radius that any of some points reaches, all orders added as if they peaked together. */
export function largestRadius(orders: readonly SteadyOrder[], points: readonly LocatedPoint[]): number {
  return points.reduce((most, { rows, shape }) => {
    const radius = orders.reduce((sum, { motion }) => {
      let [re, im] = [0, 0];
      rows.forEach((row, i) => {
        if (row < 0) return;
        re += (shape.displacement[i] ?? 0) * (motion.real[row] ?? 0);
        im += (shape.displacement[i] ?? 0) * (motion.imaginary[row] ?? 0);
      });
      return sum + Math.sqrt(re * re + im * im);
    }, 0);
    return Math.max(most, radius);
  }, 0);
}
