import { checkNotNegative, checkPositive } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import { noLoadSpeed } from '../drive/no-load-speed.js';
import { propellerTorque } from '../drive/propeller-torque.js';
import { runningPoint } from '../drive/running-point.js';
import { throttleFor } from '../drive/throttle-for.js';
import { jointAngles } from '../line/joint-angles.js';
import type { ShaftLine } from '../line/types.js';
import { lineLoads } from '../loads/line-loads.js';
import { speedFluctuation } from '../motion/speed-fluctuation.js';
import { torsionalCriticals } from '../twist/torsional-criticals.js';
import { avoidBands } from './avoid-bands.js';
import { DEFAULT_MARGINS, lineExcitations } from './excitations.js';
import { firstWhirl } from './band-reasons.js';
import { criticalsCovering } from './line-criticals.js';
import { findReasons, verdictOf } from './reasons.js';
import { speedLimit } from './speed-limit.js';
import { twistBands, type TorqueLaw } from './twist-bands.js';
import type { AssessOptions, Assessment, DriveAssessment, JointAssessment, Margins } from './types.js';

/** Bands are told up to this many times the wanted speed, and up to the no-load speed of the motor. */
const REACH = 1.5;

/**
 * Everything about one line at one speed: joint angles, speed fluctuation, critical speeds for unbalance (order 1),
 * universal joints at an angle (order 2) and the blades, torsional resonances, loads, what motor and supply make of it, the
 * bands to avoid, a speed limit, and a verdict with its reasons.
 *
 * A band reaches from Ω (1 − m) to Ω (1 + m) about each critical speed Ω, m being the margin. The limit is where the
 * lowest band of the first order begins. The verdict is `inside` in a band or beyond what a part bears, `near` within
 * half a margin of a band, above the first whirl or short of a safety factor, and `clear` elsewhere.
 *
 * @param line - a checked line, see `parseShaftLine`
 * @param options - `speed`, the wanted shaft speed in rad/s, greater than 0; `margins` as shares of the critical speed,
 *   each from 0 up to but not including 1; `torque` in N·m, the propeller's own if absent
 * @returns figures in SI, and sentences in the trade's units, each reason with its limit and where that comes from
 * @throws RangeError where the speed, a margin or the torque is out of its domain
 * @remarks Estimates from the entered data. The model holds the bushes as entered: pinned or fixed ends move a critical speed by
 *   up to 2.27 times, see `whirlBounds`. A torsional resonance makes a band only where the torque in a joint would swing past
 *   its mean. Loads are left out where no torque is known. Contact with the tube is left to `contactSpeed`.
 * @example
 * const result = assess(exampleLine(), { speed: 345 });
 * result.verdict // → 'inside'
 * result.joints.length // → 1
 * @see check values and margins: DEFAULT_MARGINS in excitations.ts
 */
export function assess(line: ShaftLine, options: AssessOptions): Assessment {
  const { speed } = options;
  checkPositive('assess: speed', speed);
  if (options.torque !== undefined) checkNotNegative('assess: torque', options.torque);
  const margins = checkMargins({ ...DEFAULT_MARGINS, ...options.margins });
  const excitations = lineExcitations(line, margins);
  const torsional = torsionalCriticals(line);
  const drive = assessDrive(line, speed);
  const torque = torqueLaw(line, options);
  const reach = Math.max(REACH * speed, drive?.noLoadSpeed ?? 0);
  const criticals = criticalsCovering(line, { excitations, cover: reach });
  const task = { line, criticals: torsional, margin: margins.twist, reach };
  const bands = [
    ...avoidBands(criticals, excitations),
    ...(torque ? twistBands({ ...task, torque }) : []),
  ].sort((a, b) => a.from - b.from);
  const limit = speedLimit(bands);
  const joints = assessJoints(line);
  const fluctuation = speedFluctuation(line);
  const loads = torque ? lineLoads(line, { speed, torque: torque(speed) }) : undefined;
  const reasons = findReasons({ line, speed, joints, fluctuation, bands, limit, loads, drive });
  return {
    speed,
    joints,
    fluctuation,
    criticalSpeeds: criticals,
    torsionalCriticals: torsional,
    ...(loads ? { loads } : {}),
    ...(drive ? { drive } : {}),
    avoidBands: bands.filter((band) => band.from <= reach || band === firstWhirl(bands)),
    speedLimit: limit,
    verdict: verdictOf(reasons),
    reasons,
  };
}

/** The mean torque at any speed, or `undefined` where nothing tells it. */
function torqueLaw(line: ShaftLine, { speed, torque }: AssessOptions): TorqueLaw | undefined {
  const known = torque ?? propellerTorqueAt(line, speed);
  return known === undefined ? undefined : (other) => known * (other / speed) ** 2;
}

/** A propeller outside the series that gives no coefficient tells no torque; that is no fault of the line. */
function propellerTorqueAt(line: ShaftLine, speed: number): number | undefined {
  if (!line.propeller) return undefined;
  try {
    return propellerTorque(line, { speed });
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

function assessDrive(line: ShaftLine, speed: number): DriveAssessment | undefined {
  const noLoad = noLoadSpeed(line);
  if (noLoad === undefined) return undefined;
  if (propellerTorqueAt(line, speed) === undefined) return { noLoadSpeed: noLoad };
  const throttle = throttleFor(line, { speed });
  return {
    noLoadSpeed: noLoad,
    fullThrottle: runningPoint(line),
    ...(throttle === undefined ? {} : { throttle }),
  };
}

function checkMargins(margins: Margins): Margins {
  for (const [name, value] of Object.entries(margins) as [string, number][]) {
    if (!(value >= 0 && value < 1)) {
      throw refusal(`assess: margins.${name}`, 'a share from 0 up to but not including 1', value);
    }
  }
  return margins;
}

function assessJoints(line: ShaftLine): JointAssessment[] {
  return jointAngles(line).map((angle, index) => {
    const kind = line.joints[index]?.kind ?? 'rigid';
    return { index, kind, angle, degree: kind === 'universal' ? Math.sin(angle) * Math.tan(angle) : 0 };
  });
}
