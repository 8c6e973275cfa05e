import { checkNotNegative, checkPositive } from '../internal/checks.js';
import { knownLining } from '../line/find-lining.js';
import type { BushLoad } from './types.js';

export interface BushTask {
  /** N */
  readonly force: number;
  /** m, of the shaft. */
  readonly diameter: number;
  /** m along the shaft; without it no pressure is told. */
  readonly length?: number;
  /** rad/s */
  readonly speed: number;
  /** A name of `LININGS`; without one, or with one that is not there, nothing is judged. */
  readonly lining?: string;
}

/**
 * Rubbing speed, pressure and their product in a bush, against the limits of its lining.
 *
 * v = Ω d / 2, p = F / (d L)
 *
 * @param bush - `force` in N, shaft `diameter` and bush `length` in m, `speed` in rad/s, and the `lining`'s name
 * @returns m/s, Pa and Pa·m/s, each limit's share, and a verdict
 * @throws RangeError where a figure is out of its domain
 * @remarks Pressure evened over the projected area: a bush out of line bears on an edge and sees several times that.
 * @example
 * const bush = { force: 20, diameter: 0.006, length: 0.012, speed: (3000 * Math.PI) / 30, lining: 'sintered bronze' };
 * bushLoad(bush).pressureSpeed / 1e6 // → 0.2618
 * bushLoad(bush).verdict // → 'within'
 * @see The Tribology Handbook, M. J. Neale (ed.); limits beside the figures in `linings.ts`
 */
export function bushLoad({ force, diameter, length, speed, lining: name }: BushTask): BushLoad {
  checkNotNegative('bushLoad: force', force);
  checkPositive('bushLoad: diameter', diameter);
  if (length !== undefined) checkPositive('bushLoad: length', length);
  checkNotNegative('bushLoad: speed', speed);
  const lining = name === undefined ? undefined : knownLining(name);
  const rubbingSpeed = (speed * diameter) / 2;
  const pressure = length === undefined ? undefined : force / (diameter * length);
  const pressureSpeed = pressure === undefined ? undefined : pressure * rubbingSpeed;
  const shares = {
    ...share('pressure', pressure, lining?.pressureLimit),
    ...share('speed', rubbingSpeed, lining?.speedLimit),
    ...share('pressureSpeed', pressureSpeed, lining?.pressureSpeedLimit),
  };
  return {
    rubbingSpeed,
    ...(pressure === undefined ? {} : { pressure }),
    ...(pressureSpeed === undefined ? {} : { pressureSpeed }),
    ...(lining ? { lining } : {}),
    shares,
    verdict: lining?.kind === 'rolling' ? 'rolling' : verdictOf(Object.values(shares)),
  };
}

function share<Key extends string>(
  key: Key,
  value: number | undefined,
  limit: number | undefined,
): Partial<Record<Key, number>> {
  if (value === undefined || limit === undefined) return {};
  return { [key]: value / limit } as Record<Key, number>;
}

function verdictOf(shares: readonly number[]): 'within' | 'beyond' | 'unknown' {
  if (shares.length === 0) return 'unknown';
  return shares.every((one) => one <= 1) ? 'within' : 'beyond';
}
