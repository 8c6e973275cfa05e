import { checkPositive } from '../internal/checks.js';
import { jointAngles } from '../line/joint-angles.js';
import type { ShaftLine } from '../line/types.js';
import { torsionalModes } from './torsional-modes.js';
import type { CriticalSource, TorsionalCritical } from './types.js';

export interface TorsionalCriticalsOptions {
  /** Orders to look at, each greater than 0. Default: 2 and 4 of universal joints at an angle, and the blade count. */
  readonly orders?: readonly number[];
  /** Modes to look at. Default 3. */
  readonly count?: number;
}

/**
 * Shaft speeds at which an order meets a torsional mode.
 *
 * Ω = ω / n
 *
 * @param line - a checked line
 * @param options - `orders`; those that the line itself drives if absent. `count` of modes, 1 to 50, default 3
 * @returns speeds in rad/s, ascending, each with its order, mode and what drives it
 * @throws RangeError for an order or a count out of its domain
 * @remarks The modes are those of {@link torsionalModes}: they do not depend on speed. How far each is driven, see
 *   {@link torsionalResponse}; a small angle drives hardly at all.
 * @example
 * const [lowest] = torsionalCriticals(exampleLine());
 * lowest.order // → 4
 * const [second] = torsionalCriticals(exampleLine(), { orders: [2] });
 * second.speed // → 795 rad/s
 * @see {@link torsionalModes}
 */
export function torsionalCriticals(
  line: ShaftLine,
  options: TorsionalCriticalsOptions = {},
): TorsionalCritical[] {
  const { orders, count = 3 } = options;
  orders?.forEach((order, i) => {
    checkPositive(`torsionalCriticals: orders[${i}]`, order);
  });
  const asked = orders?.map((order) => ({ order, source: 'asked' as const })) ?? drivenOrders(line);
  if (asked.length === 0) return [];
  const modes = torsionalModes(line, { count });
  return modes
    .flatMap(({ frequency }, i) =>
      asked.map((one) => ({ ...one, mode: i + 1, speed: frequency / one.order, frequency })),
    )
    .sort((a, b) => a.speed - b.speed);
}

function drivenOrders(line: ShaftLine): { readonly order: number; readonly source: CriticalSource }[] {
  const found: { order: number; source: CriticalSource }[] = [];
  const angles = jointAngles(line);
  if (line.joints.some(({ kind }, i) => kind === 'universal' && (angles[i] ?? 0) > 0))
    found.push({ order: 2, source: 'joints' }, { order: 4, source: 'joints' });
  if (line.propeller) found.push({ order: line.propeller.blades, source: 'blades' });
  return found;
}
