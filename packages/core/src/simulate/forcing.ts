import { jointAngles } from '../line/joint-angles.js';
import type { ShaftLine } from '../line/types.js';
import { speedFluctuation } from '../motion/speed-fluctuation.js';
import { criticalSpeeds } from '../whirl/critical-speeds.js';
import type { SimulationOptions } from './types.js';

/** What pushes the hull at one order, as a force in N at a shaft speed in rad/s. */
export interface Forcing {
  readonly order: number;
  readonly force: (speed: number) => number;
  /** How the push shares itself over fore-and-aft, athwart, and up. */
  readonly axes: readonly [number, number, number];
}

/** kg/m³, fresh water. */
const WATER = 1000;

/** Typical of a four-bladed propeller of pitch ratio 1 under way (Wageningen B4-55, J 0.4: 0.0466). */
const TORQUE_COEFFICIENT = 0.047;

/** m/s, balance grade G16 of ISO 21940-11 for propeller shafts: e·Ω. Used at the wanted speed where no unbalance is entered. */
const GRADE = 0.016;

/** rad/s at which that grade is met: 4000 rpm. */
const GRADE_SPEED = 420;

/** Share of critical damping of a whirling shaft in plain bushes; our assumption, no source. */
const DAMPING = 0.04;

/** Share of the blades' tangential force that the wake makes pulse; our assumption, no source. */
const WAKE_SHARE = 0.15;

/**
 * The pushes of a line on its hull, by simple laws that stand apart from the readings they test: unbalance u Ω², the couples
 * (T + J α) tan β of the joints over the length of their shaft, the blades' share of the torque, each raised near the first whirl as
 * a single mass on a spring.
 *
 * @remarks Good for making trials to read, not for predicting levels.
 */
export function lineForcing(line: ShaftLine, options: SimulationOptions): Forcing[] {
  const fitted = options.propeller !== 'off';
  const torque = torqueLaw(line, options);
  const couples = jointCouples(line);
  const swing = swingTorque(line, fitted);
  const forcing: Forcing[] = [
    {
      order: 1,
      force: amplified(line, 1, unbalanceForce(line, { fitted, added: options.unbalance ?? 0 })),
      axes: [0.15, 1, 0.9],
    },
  ];
  if (couples > 0) {
    forcing.push({
      order: 2,
      force: amplified(line, 2, (speed) => couples * (torque(speed) + swing * speed ** 2)),
      axes: [0.1, 0.7, 1],
    });
  }
  const { propeller } = line;
  if (propeller && fitted) {
    const arm = 0.35 * propeller.diameter;
    forcing.push({
      order: propeller.blades,
      force: amplified(line, propeller.blades, (speed) => (WAKE_SHARE * torque(speed)) / arm),
      axes: [1, 0.6, 0.8],
    });
  }
  return forcing;
}

function unbalanceForce(line: ShaftLine, { fitted, added }: { fitted: boolean; added: number }) {
  const discs = line.shafts.flatMap((shaft) => shaft.discs);
  const turning = fitted ? discs : discs.slice(0, -1);
  const entered = turning.reduce(
    (sum, disc) => sum + (disc.unbalance ?? (disc.mass * GRADE) / GRADE_SPEED),
    0,
  );
  const bow = line.shafts.reduce((sum, shaft) => sum + (shaftMass(shaft) * (shaft.runout ?? 0)) / 4, 0);
  return (speed: number) => (entered + bow + added) * speed ** 2;
}

function shaftMass(shaft: ShaftLine['shafts'][number]): number {
  const area = (Math.PI / 4) * (shaft.outerDiameter ** 2 - shaft.innerDiameter ** 2);
  return area * shaft.length * shaft.material.density;
}

/** 1/m: the push at the bushes for one N·m in the shaft. */
function jointCouples(line: ShaftLine): number {
  const angles = jointAngles(line);
  return line.joints.reduce((sum, joint, i) => {
    const driven = line.shafts[i + 1];
    if (joint.kind !== 'universal' || !driven) return sum;
    return sum + Math.tan(angles[i] ?? 0) / driven.length;
  }, 0);
}

/** kg·m²: the torque that turning unevenly asks of the propeller, J α, over the square of the speed. */
function swingTorque(line: ShaftLine, fitted: boolean): number {
  const discs = line.shafts.at(-1)?.discs ?? [];
  const wet = line.propeller?.wetInertiaFactor ?? 1.25;
  const inertia = fitted ? discs.reduce((sum, disc) => sum + disc.polarInertia * wet, 0) : 0;
  return inertia * speedFluctuation(line).degree;
}

function torqueLaw(line: ShaftLine, options: SimulationOptions): (speed: number) => number {
  const { torque } = options;
  if (torque !== undefined) return () => torque;
  const { propeller } = line;
  if (!propeller || options.propeller === 'off') return () => 0.005;
  const coefficient = propeller.torqueCoefficient ?? TORQUE_COEFFICIENT;
  return (speed) => coefficient * WATER * (speed / (2 * Math.PI)) ** 2 * propeller.diameter ** 5;
}

/** The force raised by a single mass on a spring that meets this order at the line's first critical speed. */
function amplified(line: ShaftLine, order: number, force: (speed: number) => number) {
  const critical = criticalSpeeds(line, { order, count: 1 })[0]?.speed;
  if (critical === undefined) return force;
  return (speed: number) => {
    const ratio = speed / critical;
    return force(speed) / Math.hypot(1 - ratio ** 2, 2 * DAMPING * ratio);
  };
}
