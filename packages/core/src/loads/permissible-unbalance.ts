import { checkNotNegative, checkPositive } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';

/** Balance grades G of ISO 21940-11, in steps of 2.5; the number is e·Ω in mm/s. From memory. */
const GRADES: readonly number[] = [0.4, 1, 2.5, 6.3, 16, 40, 100, 250, 630, 1600, 4000];

export interface BalanceTask {
  /** The G number: 16 for cardan and propeller shafts of special demand, 40 for ordinary ones, 6.3 for small motors. */
  readonly grade: number;
  /** kg */
  readonly mass: number;
  /** rad/s */
  readonly speed: number;
}

/**
 * The unbalance that a balance grade leaves to a rotor.
 *
 * U = m G / Ω, G in m/s: the grade's number is e·Ω in mm/s
 *
 * @param task - `grade`, one of 0.4, 1, 2.5, 6.3, 16, 40, 100, 250, 630, 1600, 4000; `mass` in kg; `speed` in rad/s
 * @returns kg·m
 * @throws RangeError where a figure is out of its domain
 * @remarks Of a rigid rotor, for both planes together. The force U Ω² grows with speed all the same.
 * @example
 * const speed = (10_000 * Math.PI) / 30;
 * permissibleUnbalance({ grade: 6.3, mass: 2, speed }) * 1e6 // → 12.03
 * @see ISO 21940-11:2016; the example as printed (12 g·mm) at
 *   https://docs.steelcam.org/widia/katalog-widia-instrumentalnaya-osnastka-page1089
 */
export function permissibleUnbalance({ grade, mass, speed }: BalanceTask): number {
  if (!GRADES.includes(grade))
    throw refusal('permissibleUnbalance: grade', `one of ${GRADES.join(', ')}`, grade);
  checkNotNegative('permissibleUnbalance: mass', mass);
  checkPositive('permissibleUnbalance: speed', speed);
  return (mass * grade) / 1000 / speed;
}
