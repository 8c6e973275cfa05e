import { checkWhole } from '../internal/checks.js';
import type { ShaftLine } from '../line/types.js';
import { balance } from './balance.js';
import { driveOf, type Drive } from './drive-of.js';
import { propellerLaw } from './propeller-law.js';
import type { PropellerConditions, ThrottleRange } from './types.js';

export interface ThrottleRangeOptions extends PropellerConditions {
  /** How many points, 2 to 1000. Default 21. */
  readonly count?: number;
}

/**
 * The running points of a line from where its motor starts to turn to full throttle.
 *
 * @param line - a checked line with a motor, a supply and a propeller
 * @param options - `count` of points, default 21, at even steps of throttle; the rest as in {@link runningPoint}
 * @returns `start`, the throttle that just overcomes the motor's friction, and the points from there to 1
 * @throws RangeError as {@link runningPoint} does
 * @remarks A controller may need more than `start` to set a motor going, and has a curve of its own from stick to voltage.
 * @example
 * const { start, points } = throttleRange(exampleLine(), { count: 3 });
 * start // → 0.0059
 * points.map(({ throttle }) => throttle) // → [0.01, 0.50, 1.00]
 * points[0].speed // → 0
 * @see {@link runningPoint}
 */
export function throttleRange(line: ShaftLine, options: ThrottleRangeOptions = {}): ThrottleRange {
  const { count = 21, ...conditions } = options;
  const drive = driveOf('throttleRange', line);
  checkWhole('throttleRange: count', count, [2, 1000]);
  const law = propellerLaw('throttleRange', drive.propeller, conditions);
  const start = startingThrottle(drive);
  const points = Array.from({ length: count }, (_, i) => {
    const throttle = i === count - 1 ? 1 : start + ((1 - start) * i) / (count - 1);
    return balance(drive, { throttle, law });
  });
  return { start, points };
}

/** τV = I₀ (R + τ² R_s), the smaller root. */
function startingThrottle({ motor, supply }: Drive): number {
  const { voltage } = supply;
  const drop = motor.noLoadCurrent * motor.resistance;
  const square = 4 * motor.noLoadCurrent * supply.resistance * drop;
  return Math.min(1, (2 * drop) / (voltage + Math.sqrt(Math.max(0, voltage ** 2 - square))));
}
