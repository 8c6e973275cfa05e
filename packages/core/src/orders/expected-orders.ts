import type { SpeedHints } from './types.js';

export interface ExpectedOrder {
  readonly order: number;
  /** Chance that a recording of a running line shows it. */
  readonly chance: number;
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

/** Orders of shaft speed that a line shows, each with the chance that it does; what is known of the line raises some. */
export function expectedOrders({ joints = [], propeller, motor }: SpeedHints): ExpectedOrder[] {
  const chances = new Map(USUAL);
  const raise = (order: number, chance: number): void => {
    chances.set(order, Math.max(chance, chances.get(order) ?? 0));
  };
  if (joints.some(({ kind }) => kind === 'universal')) raise(2, 0.7);
  if (propeller !== undefined) {
    raise(propeller.blades, 0.7);
    raise(2 * propeller.blades, 0.4);
  }
  if (motor?.poles !== undefined) {
    raise(motor.poles / 2, 0.3);
    raise(motor.poles, 0.4);
  }
  return [...chances].map(([order, chance]) => ({ order, chance })).sort((a, b) => a.order - b.order);
}
