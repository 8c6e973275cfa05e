import { checkPositive } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import { noLoadSpeed } from '../drive/no-load-speed.js';
import { jointAngles } from '../line/joint-angles.js';
import type { ShaftLine } from '../line/types.js';
import { speedFluctuation } from '../motion/speed-fluctuation.js';
import { lineWhirl } from '../whirl/line-whirl.js';
import { avoidBands } from './avoid-bands.js';
import { DEFAULT_MARGINS, lineExcitations, type LineExcitation } from './excitations.js';
import { findReasons, firstWhirl, verdictOf } from './reasons.js';
import { figure, makeStatement } from './statement.js';
import type {
  AssessOptions,
  Assessment,
  AvoidBand,
  JointAssessment,
  LineCriticalSpeed,
  Margins,
  SpeedLimit,
} from './types.js';

/** Modes looked at for each excitation. */
const MODES = 4;

/** Bands are told up to this many times the wanted speed, and up to the no-load speed of the motor. */
const REACH = 1.5;

/**
 * Everything about one line at one speed: joint angles, speed fluctuation, critical speeds for unbalance (order 1),
 * universal joints at an angle (order 2) and the blades, the bands to avoid, a speed limit, and a verdict with its reasons.
 *
 * A band reaches from Ω (1 − m) to Ω (1 + m) about each critical speed Ω, m being the margin. The limit is where the
 * lowest band of the first order begins. The verdict is `inside` in a band or beyond what a joint allows, `near` within
 * half a margin of a band or above the first whirl, and `clear` elsewhere.
 *
 * @param line - a checked line, see `parseShaftLine`
 * @param options - `speed`, the wanted shaft speed in rad/s, greater than 0; `margins` as shares of the critical speed,
 *   each from 0 up to but not including 1
 * @returns figures in SI, and sentences in the trade's units
 * @throws RangeError where the speed or a margin is out of its domain
 * @remarks Estimates from the entered data. The model holds the bushes as entered: pinned or fixed ends move a critical speed by
 *   up to 2.27 times.
 * @example
 * const result = assess(exampleLine(), { speed: 345 });
 * result.verdict // → 'inside'
 * result.joints.length // → 1
 * @see check values and margins: DEFAULT_MARGINS in excitations.ts
 */
export function assess(line: ShaftLine, { speed, margins = {} }: AssessOptions): Assessment {
  checkPositive('assess: speed', speed);
  const excitations = lineExcitations(line, checkMargins({ ...DEFAULT_MARGINS, ...margins }));
  const criticals = criticalsOf(line, excitations);
  const reach = Math.max(REACH * speed, noLoadSpeed(line) ?? 0);
  const bands = avoidBands(criticals, excitations);
  const limit = speedLimit(bands);
  const joints = assessJoints(line);
  const fluctuation = speedFluctuation(line);
  const reasons = findReasons({ line, speed, joints, fluctuation, bands, limit });
  return {
    speed,
    joints,
    fluctuation,
    criticalSpeeds: criticals,
    avoidBands: bands.filter((band) => band.from <= reach || band === firstWhirl(bands)),
    speedLimit: limit,
    verdict: verdictOf(reasons),
    reasons,
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

function criticalsOf(line: ShaftLine, sources: readonly LineExcitation[]): LineCriticalSpeed[] {
  const driven = sources.flatMap(({ excitation, order, whirls }) =>
    whirls.map((whirl) => ({ excitation, order, whirl, count: MODES })),
  );
  return lineWhirl(line, driven).flatMap(({ order, whirl, modes }, i) =>
    modes.map(({ speed, shape }, mode) => ({
      excitation: driven[i]?.excitation ?? 'unbalance',
      order,
      whirl,
      mode: mode + 1,
      speed,
      shape,
    })),
  );
}

function assessJoints(line: ShaftLine): JointAssessment[] {
  return jointAngles(line).map((angle, index) => {
    const kind = line.joints[index]?.kind ?? 'rigid';
    return { index, kind, angle, degree: kind === 'universal' ? Math.sin(angle) * Math.tan(angle) : 0 };
  });
}

function speedLimit(bands: readonly AvoidBand[]): SpeedLimit {
  const first = firstWhirl(bands);
  if (!first) {
    return {
      speed: Infinity,
      ...makeStatement('No whirl of the first order was found: whirl sets no limit.', {}),
    };
  }
  const template = 'Stay below {limit}: {margin} under the first whirl at {critical}.';
  const figures = {
    limit: figure('speed', first.from),
    margin: figure('share', first.margin),
    critical: figure('speed', Math.min(...first.criticalSpeeds)),
  };
  return { speed: first.from, ...makeStatement(template, figures) };
}
