import { checkNotNegative } from '../internal/checks.js';
import type { ShaftLine } from '../line/types.js';
import { driveOf } from './drive-of.js';
import { propellerLaw } from './propeller-law.js';
import type { PropellerConditions } from './types.js';

export interface ThrottleForOptions extends PropellerConditions {
  /** rad/s, at least 0. */
  readonly speed: number;
}

/**
 * The throttle that turns the loaded shaft at a speed.
 *
 * τV − τ² R_supply I = ω/k + I R_motor, I = I₀ + kQ(ω): the smaller root τ
 *
 * @param line - a checked line with a motor, a supply and a propeller
 * @param options - `speed` in rad/s; the rest as in {@link runningPoint}
 * @returns a share of the supply voltage, 0 to 1, or `undefined` for a speed beyond full throttle
 * @throws RangeError as {@link runningPoint} does, and for a negative speed
 * @remarks The inverse of {@link runningPoint}; speed 0 gives the throttle at which the motor starts to turn.
 * @example
 * throttleFor(exampleLine(), { speed: runningPoint(exampleLine(), { throttle: 0.6 }).speed }) // → 0.6000
 * throttleFor(exampleLine(), { speed: 5000 }) // → undefined
 * @see {@link runningPoint}
 */
export function throttleFor(line: ShaftLine, options: ThrottleForOptions): number | undefined {
  const { speed, ...conditions } = options;
  const { motor, supply, propeller } = driveOf('throttleFor', line);
  checkNotNegative('throttleFor: speed', speed);
  const law = propellerLaw('throttleFor', propeller, conditions);
  const torque = speed > 0 ? law.torque(speed) : 0;
  const current = motor.noLoadCurrent + motor.speedConstant * torque;
  const needed = speed / motor.speedConstant + current * motor.resistance;
  const square = supply.voltage ** 2 - 4 * supply.resistance * current * needed;
  if (square < 0) return undefined;
  const throttle = (2 * needed) / (supply.voltage + Math.sqrt(square));
  if (throttle <= 1) return throttle;
  return throttle <= 1 + FULL ? 1 : undefined;
}

/** Rounding of the speed at full throttle. */
const FULL = 1e-9;
