import { checkPositive } from '../internal/checks.js';
import type { TrialMass, TrialMassInput } from './types.js';

/** m/s², standard acceleration of free fall. */
const GRAVITY = 9.80665;

/**
 * A trial mass large enough to read and small enough to be safe.
 *
 * m = share · M g / (r Ω²): its centrifugal force at the speed of the runs is a share of the rotor's weight
 *
 * @param input - `rotorMass` M in kg, `speed` Ω in rad/s, `radius` r in m, `share`, default 0.1; all greater than 0
 * @returns mass in kg, its force in N, its unbalance in kg·m
 * @throws RangeError for a value that is not a finite number greater than 0
 * @remarks Where that mass changes the amplitude by less than about a third, take more; start with less on a line that
 *   shakes badly already.
 * @example
 * const { mass, force } = trialMass({ rotorMass: 0.05, speed: 314.16, radius: 0.02 });
 * mass * 1000 // → 0.025
 * force // → 0.049
 * @see Common practice in balancing: a trial force of about a tenth of the weight; from memory
 */
export function trialMass({ rotorMass, speed, radius, share = 0.1 }: TrialMassInput): TrialMass {
  for (const [name, value] of Object.entries({ rotorMass, speed, radius, share })) {
    checkPositive(`trialMass: ${name}`, value);
  }
  const force = share * rotorMass * GRAVITY;
  const unbalance = force / speed ** 2;
  return { mass: unbalance / radius, force, unbalance };
}
