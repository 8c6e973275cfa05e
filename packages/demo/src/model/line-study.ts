import {
  contactSpeed,
  propellerTorque,
  speedFrequencyMap,
  whirlBounds,
  whirlResponse,
  type ShaftLine,
  type SpeedFrequencyMap,
  type WhirlBound,
  type WhirlExcitation,
} from '@sternline/core';

/** What the costly part of the whirl comes to for one line. */
export interface LineStudy {
  /** Lowest first; how firmly the bushes hold makes the difference. */
  readonly bounds: readonly WhirlBound[];
  readonly map: SpeedFrequencyMap;
  /** Absent where no shaft turns in a tube. */
  readonly clearance?: ClearanceStudy;
}

/** How wide the whirl is against the room in the tube. */
export interface ClearanceStudy {
  /** rad/s */
  readonly speeds: Float64Array;
  readonly tubes: readonly TubeStudy[];
  /** rad/s at which a shaft first touches its tube; Infinity where none does up to the last speed. */
  readonly contact: number;
  /** Whether anything drives the whirl: an unbalance, a run-out, a torque through a bent joint. */
  readonly driven: boolean;
}

export interface TubeStudy {
  readonly shaft: number;
  /** m, radial */
  readonly clearance: number;
  /** m, at each speed the largest radius that the shaft reaches in its tube. */
  readonly radius: Float64Array;
}

export interface StudyOptions {
  /** rad/s, up to which to look. */
  readonly top: number;
  /** rad/s, the wanted speed, at which the propeller's torque is taken. */
  readonly speed: number;
}

/** Modes looked at. */
const MODES = 3;
/** Steps of speed on the map, whose lines are nearly straight, and in the response, whose peaks are not. */
const MAP_STEPS = 12;
const RESPONSE_STEPS = 120;
/** Further looks about each peak, as shares of its speed. */
const ABOUT_PEAK = [-0.06, -0.03, -0.015, -0.0075, 0, 0.0075, 0.015, 0.03, 0.06];

/**
 * Bounds of the critical speeds, the speed–frequency map, and the whirl against the clearance of the tubes.
 *
 * @param line - a checked line
 * @param options - how far to look
 */
export function studyLine(line: ShaftLine, { top, speed }: StudyOptions): LineStudy {
  const bounds = whirlBounds(line, { count: MODES });
  const map = speedFrequencyMap(line, { speeds: evenly(top, MAP_STEPS), modes: MODES });
  if (line.shafts.every(({ tubeBore }) => tubeBore === undefined)) return { bounds, map };
  return { bounds, map, clearance: studyClearance(line, { top, speed, peaks: peaksOf(bounds) }) };
}

function evenly(top: number, steps: number): Float64Array {
  return Float64Array.from({ length: steps + 1 }, (_, i) => (top * i) / steps);
}

/** The line as entered whirls at its lower bounds; twice a turn it is reached at half. */
function peaksOf(bounds: readonly WhirlBound[]): number[] {
  return bounds.flatMap(({ lower }) => [lower, lower / 2]);
}

function studyClearance(
  line: ShaftLine,
  { top, speed, peaks }: StudyOptions & { readonly peaks: readonly number[] },
): ClearanceStudy {
  const near = peaks.flatMap((peak) => ABOUT_PEAK.map((share) => peak * (1 + share)));
  const speeds = [...evenly(top, RESPONSE_STEPS), ...near.filter((value) => value < top)].sort(
    (a, b) => a - b,
  );
  const excitations = excitationsOf(line, speed);
  const { tubes } = whirlResponse(line, { speeds, excitations });
  return {
    speeds: Float64Array.from(speeds),
    tubes,
    contact: contactSpeed(line, { to: top, excitations }).speed,
    driven: tubes.some(({ radius }) => radius.some((value) => value > 0)),
  };
}

function excitationsOf(line: ShaftLine, speed: number): WhirlExcitation[] {
  const unbalanced: WhirlExcitation[] = [{ kind: 'unbalance' }, { kind: 'bow' }];
  const torque = torqueOf(line, speed);
  return torque === undefined ? unbalanced : [...unbalanced, { kind: 'joints', torque, torqueSpeed: speed }];
}

function torqueOf(line: ShaftLine, speed: number): number | undefined {
  if (!line.propeller) return undefined;
  try {
    return propellerTorque(line, { speed });
  } catch {
    return undefined;
  }
}
