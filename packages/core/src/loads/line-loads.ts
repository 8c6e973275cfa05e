import { checkNotNegative, checkPositive } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import { propellerTorque } from '../drive/propeller-torque.js';
import { jointAngles } from '../line/joint-angles.js';
import type { ShaftLine } from '../line/types.js';
import { shaftStress } from '../twist/shaft-stress.js';
import { torsionalResponse } from '../twist/torsional-response.js';
import type { TorsionalResponse } from '../twist/types.js';
import { bearingSpans } from './bearing-spans.js';
import { bushLoad } from './bush-load.js';
import { checkFastener } from './check-fastener.js';
import { jointCouples } from './joint-couples.js';
import { sealSpeeds } from './seal-speeds.js';
import { shaftSafety } from './shaft-safety.js';
import { supportReactions } from './support-reactions.js';
import type {
  Allowance,
  JointLoad,
  LineLoads,
  ShaftBending,
  ShaftLoad,
  SupportLoad,
  SupportReaction,
} from './types.js';

export interface LineLoadsOptions {
  /** rad/s */
  readonly speed: number;
  /** N·m, mean; that of the propeller at this speed, held at the quay, if absent. */
  readonly torque?: number;
  /** Balance grade of discs that give no unbalance of their own. Default 16. */
  readonly balanceGrade?: number;
  /** Amplitude of the blades' torque as a share of the mean. Default 0.1. */
  readonly bladeShare?: number;
  /** Share of critical damping of every torsional mode. Default 0.02. */
  readonly damping?: number;
}

/**
 * Every load of a line at one speed: couples, torque and its swing at the joints and whether their screws hold, forces and
 * rubbing at the supports, stress and safety of the shafts, spans, and what seals bear.
 *
 * @param line - a checked line
 * @param options - `speed` in rad/s; mean `torque` in N·m, else the propeller's at that speed; `balanceGrade`, default 16;
 *   `bladeShare`, default 0.1; `damping`, default 0.02
 * @returns figures in SI, each beside its limit
 * @throws RangeError for an option out of its domain, where a part of the line is free to move, or where no torque is given
 *   and the line's propeller does not tell one
 * @remarks Gathers {@link jointCouples}, {@link torsionalResponse}, {@link supportReactions}, {@link setScrewHolding},
 *   {@link bushLoad}, {@link shaftSafety}, {@link bearingSpans} and {@link sealSpeeds}; their remarks hold here. Whirl adds to
 *   the forces near its critical speeds.
 * @example
 * const loads = lineLoads(exampleLine(), { speed: 345, torque: 0.2 });
 * loads.joints[0].peakTorque // → 0.307
 * loads.supports[3].bush.verdict // → 'within'
 * @see the functions that it gathers
 */
export function lineLoads(line: ShaftLine, options: LineLoadsOptions): LineLoads {
  const { speed, balanceGrade, bladeShare, damping } = options;
  checkPositive('lineLoads: speed', speed);
  if (options.torque !== undefined) checkNotNegative('lineLoads: torque', options.torque);
  if (options.torque === undefined && !line.propeller)
    throw refusal('lineLoads: torque', 'given where the line has no propeller', undefined);
  const torque = options.torque ?? propellerTorque(line, { speed });
  const response = torsionalResponse(line, {
    speed,
    torque,
    ...(bladeShare === undefined ? {} : { bladeShare }),
    ...(damping === undefined ? {} : { damping }),
  });
  const reactions = supportReactions(line, {
    speed,
    torque,
    ...(balanceGrade === undefined ? {} : { balanceGrade }),
  });
  return {
    speed,
    torque,
    joints: loadsOfJoints(line, torque, response),
    supports: reactions.supports.map((reaction) => supportLoad(line, speed, reaction)),
    shafts: reactions.bending.map((bending, shaft) =>
      shaftLoad(line, { shaft, bending, torque, torqueSwing: response.shaftSwing[shaft] ?? 0 }),
    ),
    spans: bearingSpans(line, { speed }),
    seals: sealSpeeds({ diameter: line.shafts.at(-1)?.outerDiameter ?? 0, speed }),
  };
}

function loadsOfJoints(line: ShaftLine, torque: number, { jointSwing }: TorsionalResponse): JointLoad[] {
  const angles = jointAngles(line);
  return jointCouples(line, { torque }).map((couple, i) => {
    const torqueSwing = jointSwing[i] ?? 0;
    const peakTorque = torque + torqueSwing;
    const joint = line.joints[i];
    const sides = [line.shafts[i], line.shafts[i + 1]].map((shaft) => shaft?.outerDiameter ?? Infinity);
    const shaftDiameter = Math.min(...sides);
    const fastener =
      joint?.fastener && peakTorque > 0
        ? checkFastener({ fastener: joint.fastener, shaftDiameter, torque, swing: torqueSwing })
        : undefined;
    return {
      joint: i,
      couple,
      torqueSwing,
      peakTorque,
      rattles: torqueSwing > torque,
      ...(joint?.ratedTorque === undefined ? {} : { rated: allowance(peakTorque, joint.ratedTorque) }),
      ...(joint?.maxAngle === undefined ? {} : { bend: allowance(angles[i] ?? 0, joint.maxAngle) }),
      ...(fastener ? { fastener } : {}),
    };
  });
}

function allowance(value: number, limit: number): Allowance {
  return { value, limit, factor: limit / value, within: value <= limit };
}

function supportLoad(line: ShaftLine, speed: number, reaction: SupportReaction): SupportLoad {
  const shaft = line.shafts[reaction.shaft];
  const { length, lining } = shaft?.supports[reaction.support] ?? {};
  const bush = bushLoad({
    force: reaction.largest,
    diameter: shaft?.outerDiameter ?? 0,
    speed,
    ...(length === undefined ? {} : { length }),
    ...(lining === undefined ? {} : { lining }),
  });
  return { ...reaction, bush };
}

interface ShaftTask {
  readonly shaft: number;
  readonly bending: ShaftBending;
  readonly torque: number;
  readonly torqueSwing: number;
}

function shaftLoad(line: ShaftLine, { shaft, bending, torque, torqueSwing }: ShaftTask): ShaftLoad {
  const own = line.shafts[shaft];
  if (!own) throw new RangeError(`lineLoads: no shaft ${shaft}`);
  const { alternating, steady } = bending;
  return {
    shaft,
    bending,
    torque,
    torqueSwing,
    stress: shaftStress(own, { torque: torque + torqueSwing, bendingMoment: alternating + steady }),
    safety: shaftSafety(own, { alternatingBending: alternating, steadyBending: steady, torque, torqueSwing }),
  };
}
