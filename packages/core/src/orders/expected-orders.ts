import type { Sampling } from '../recording/types.js';
import type { SpeedHints } from './types.js';

export interface ExpectedOrder {
  readonly order: number;
  /** Chance that a recording of a running line shows it. */
  readonly chance: number;
  /** Whether a folded line may be taken for it; where any order would do, everything would fit. */
  readonly mayFold: boolean;
}

/** Common practice: the first order shows most, the second next, higher ones less and less. */
const USUAL: readonly (readonly [number, number])[] = [
  [1, 0.85],
  [2, 0.5],
  [3, 0.3],
  [4, 0.25],
  [5, 0.15],
  [6, 0.15],
];

/** Slots, poles and teeth of motors make some order below this strong, and nobody can say which. */
const HIGHEST = 40;
const ANY_CHANCE = 0.04;

/** Orders of shaft speed that a line shows, each with the chance that it does; what is known of the line raises some. Likeliest first. */
export function expectedOrders(
  { joints = [], propeller, motor }: SpeedHints,
  kind: Sampling['kind'],
): ExpectedOrder[] {
  const chances = new Map(USUAL);
  for (let order = USUAL.length + 1; order <= HIGHEST; order++) chances.set(order, ANY_CHANCE);
  const heard = kind === 'sound';
  // Unbalance shakes a hull more than it sounds, and less yet beside the blades of a propeller.
  if (heard) chances.set(1, propeller === undefined ? 0.6 : 0.4);
  const raise = (order: number, chance: number): void => {
    chances.set(order, Math.max(chance, chances.get(order) ?? 0));
  };
  if (joints.some(({ kind }) => kind === 'universal')) raise(2, 0.7);
  if (propeller !== undefined) {
    raise(propeller.blades, heard ? 0.85 : 0.7);
    raise(2 * propeller.blades, heard ? 0.6 : 0.4);
  }
  if (motor?.poles !== undefined) {
    raise(motor.poles / 2, 0.3);
    raise(motor.poles, 0.4);
  }
  return [...chances]
    .map(([order, chance]) => ({ order, chance, mayFold: chance > ANY_CHANCE }))
    .sort((a, b) => b.chance - a.chance || a.order - b.order);
}
