import { checkNotNegative } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import type { ShaftLine } from '../line/types.js';
import { propellerLaw } from './propeller-law.js';
import type { PropellerConditions } from './types.js';

export interface PropellerTorqueOptions extends PropellerConditions {
  /** rad/s, at least 0. */
  readonly speed: number;
}

/**
 * The torque that the propeller of a line asks for at a speed.
 *
 * Q = K_Q ρ n² D⁵, n = ω / 2π
 *
 * @param line - a checked line with a propeller; it needs neither motor nor supply
 * @param options - `speed` in rad/s; the rest as in {@link runningPoint}
 * @returns N·m
 * @throws RangeError where the line has no propeller, an option is out of its domain, or the propeller is outside the
 *   series and gives no torque coefficient
 * @remarks At J = 0, held at the quay, as in {@link runningPoint}: the most that the propeller asks for.
 * @example
 * const propeller = { blades: 3, diameter: 0.04, pitch: 0.04 };
 * const line = parseShaftLine({ ...exampleLine(), propeller });
 * propellerTorque(line, { speed: (6014.692 * Math.PI) / 30 }) // → 0.061369
 * @see {@link runningPoint}
 */
export function propellerTorque(line: ShaftLine, options: PropellerTorqueOptions): number {
  const { speed, ...conditions } = options;
  checkNotNegative('propellerTorque: speed', speed);
  if (!line.propeller) throw refusal('propellerTorque: line.propeller', 'given', undefined);
  const law = propellerLaw('propellerTorque', line.propeller, conditions);
  return speed > 0 ? law.torque(speed) : 0;
}
