import { refusal } from '../internal/refuse.js';
import type { ShaftLine } from '../line/types.js';
import { balance } from './balance.js';
import { driveOf } from './drive-of.js';
import { propellerLaw } from './propeller-law.js';
import type { RunningOptions, RunningPoint } from './types.js';

/**
 * The speed at which motor, supply and propeller are in balance, and what it takes.
 *
 * ω = k (τV − I (R_motor + τ² R_supply)), I = I₀ + kQ, Q = K_Q ρ D⁵ (ω/2π)², with k the speed constant and τ the
 * throttle. With a coefficient K_Q that does not vary this is a quadratic equation in ω.
 *
 * @param line - a checked line with a motor, a supply and a propeller
 * @param options - `throttle`, default 1; `advance` J, default 0 (held at the quay), or `waterSpeed` in m/s; `areaRatio`;
 *   `waterDensity` in kg/m³, default 1000
 * @returns speed, currents, torque, powers and heat; at rest where the throttle does not overcome the motor's own friction
 * @throws RangeError where the line lacks a part, an option is out of its domain, or the propeller is outside the series
 *   and gives no torque coefficient
 * @remarks The motor is the linear one of textbooks: losses that grow with speed or current beyond I₀ and I²R are left
 *   out. The controller is a lossless chopper: the supply gives τ times the motor's current. K_Q is `torqueCoefficient`
 *   where the propeller has one, at any J; else that of the Wageningen B series, at a Reynolds number far above a
 *   model's. A measured speed settles it better: see {@link effectiveTorqueCoefficient}. Friction of bushes and seals
 *   is not counted.
 * @example
 * const motor = { speedConstant: (1000 * Math.PI) / 30, resistance: 0.2, noLoadCurrent: 0.5 };
 * const propeller = { blades: 3, diameter: 0.04, pitch: 0.04 };
 * const line = parseShaftLine({ ...exampleLine(), motor, propeller, supply: { voltage: 7.4 } });
 * const { speed, current } = runningPoint(line);
 * (speed * 30) / Math.PI // → 6014.7
 * current // → 6.9265
 * @see from memory: the linear model of a permanent-magnet motor, in any text on electrical machines
 */
export function runningPoint(line: ShaftLine, options: RunningOptions = {}): RunningPoint {
  const drive = driveOf('runningPoint', line);
  const { throttle = 1, ...conditions } = options;
  if (!(throttle >= 0 && throttle <= 1))
    throw refusal('runningPoint: throttle', 'a share from 0 to 1', throttle);
  const law = propellerLaw('runningPoint', drive.propeller, conditions);
  return balance(drive, { throttle, law });
}
