import { checkPositive } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import type { ShaftLine } from '../line/types.js';
import { driveOf, type Drive } from './drive-of.js';

/** A speed taken under load, and at what throttle. */
export interface MeasuredRun {
  /** rad/s, measured under load. */
  readonly speed: number;
  /** Share of the supply voltage, above 0 and up to 1. Default 1. */
  readonly throttle?: number;
  /** A in the motor, where it was measured too; it tells the torque better than the speed does. */
  readonly current?: number;
  /** kg/m³. Default 1000. */
  readonly waterDensity?: number;
}

/**
 * The torque coefficient that the propeller must have, for the line to run at the speed that was measured.
 *
 * I = (τV − ω/k) / (R_motor + τ² R_supply), Q = (I − I₀)/k, K_Q = Q / (ρ n² D⁵)
 *
 * @param line - a checked line with a motor, a supply and a propeller
 * @param run - `speed` in rad/s; `throttle`, default 1; `current` in A if it was measured; `waterDensity` in kg/m³
 * @returns K_Q, to be set as `propeller.torqueCoefficient`; it then carries the bushes' friction too
 * @throws RangeError where the line lacks a part, or the run leaves no torque for the propeller: as fast as without load,
 *   or with no more than the no-load current
 * @remarks From speed alone it is a small difference of large voltages: 1 % of error in speed constant or voltage moves it
 *   by several per cent, the more the less the motor is loaded.
 * @example
 * const { speed, propeller } = runningPoint(exampleLine(), { throttle: 0.8 });
 * propeller.torqueCoefficient // → 0.0662
 * effectiveTorqueCoefficient(exampleLine(), { speed, throttle: 0.8 }) // → 0.0662
 * @see {@link runningPoint}
 */
export function effectiveTorqueCoefficient(line: ShaftLine, run: MeasuredRun): number {
  const drive = driveOf('effectiveTorqueCoefficient', line);
  const { speed, throttle = 1, waterDensity = 1000 } = run;
  checkPositive('effectiveTorqueCoefficient: speed', speed);
  checkPositive('effectiveTorqueCoefficient: waterDensity', waterDensity);
  if (!(throttle > 0 && throttle <= 1))
    throw refusal('effectiveTorqueCoefficient: throttle', 'a share above 0 and up to 1', throttle);
  const current = run.current ?? currentOf(drive, { speed, throttle });
  const torque = (current - drive.motor.noLoadCurrent) / drive.motor.speedConstant;
  if (!(torque > 0 && Number.isFinite(torque))) throw noLoad(run);
  const turns = speed / (2 * Math.PI);
  return torque / (waterDensity * turns ** 2 * drive.propeller.diameter ** 5);
}

function currentOf(
  { motor, supply }: Drive,
  { speed, throttle }: { readonly speed: number; readonly throttle: number },
): number {
  const left = throttle * supply.voltage - speed / motor.speedConstant;
  return left / (motor.resistance + throttle ** 2 * supply.resistance);
}

function noLoad({ current, speed }: MeasuredRun): RangeError {
  if (current !== undefined)
    return refusal('effectiveTorqueCoefficient: current', 'above the no-load current of the motor', current);
  return refusal('effectiveTorqueCoefficient: speed', 'below the no-load speed at this throttle', speed);
}
