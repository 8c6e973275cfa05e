import type { ShaftLine } from '../line/types.js';

/**
 * The speed that the motor reaches with nothing to turn.
 *
 * ω₀ = k (V − I₀ (R_motor + R_supply)), k the speed constant and I₀ the no-load current.
 *
 * @param line - a checked line
 * @returns rad/s, or `undefined` where the line has no motor or no supply
 * @remarks Speed controller losses are not counted.
 * @example
 * const motor = { speedConstant: 50, resistance: 0.1, noLoadCurrent: 1, rotorInertia: 1e-5 };
 * const line = parseShaftLine({ ...exampleLine(), motor, supply: { voltage: 11, resistance: 0 } });
 * noLoadSpeed(line) // → 545 rad/s
 * @see from memory: the linear model of a permanent-magnet motor, in any text on electrical machines
 */
export function noLoadSpeed(line: ShaftLine): number | undefined {
  const { motor, supply } = line;
  if (!motor || !supply) return undefined;
  const drop = motor.noLoadCurrent * (motor.resistance + supply.resistance);
  return Math.max(0, motor.speedConstant * (supply.voltage - drop));
}
