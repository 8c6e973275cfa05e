import type { Evidence } from './evidence.js';
import { orderEvidence } from './order-evidence.js';
import type { Cause } from './types.js';

/** The size of what a cause shows by itself in one trial. */
export interface CauseLine {
  readonly amplitude: number;
  readonly amplitudeError: number;
}

/** Orders whose sizes together stand for a cause. */
export function ordersOf(cause: Cause, blades: number, odd: number): readonly number[] {
  if (cause === 'joint-angle' || cause === 'joint-phase') return [2];
  if (cause === 'blade-pass') return [blades];
  if (cause === 'looseness') return [0.5, 1, 1.5, 2, 3, 4, 5];
  if (cause === 'unexplained') return [odd];
  if (cause === 'structural-resonance' || cause === 'electrical') return [];
  return [1];
}

/**
 * Root of the sum of squares over orders and channels; where nothing is seen, half the height that would have been seen
 * with an error as large. Undefined where an order could not have been seen.
 */
export function causeLine(evidence: Evidence, orders: readonly number[]): CauseLine | undefined {
  let [power, error] = [0, 0];
  for (const order of orders) {
    const found = orderEvidence(evidence, order);
    if (found === undefined) continue;
    const { measurement, reading, clear, amplitude } = found;
    if (!measurement.reachable || (reading.seen && !clear)) {
      if (orders.length === 1) return undefined;
      continue;
    }
    const floor = Math.max(0, ...measurement.channels.map((channel) => channel.floor));
    power += (clear ? amplitude : floor / 2) ** 2;
    error = Math.hypot(error, clear ? reading.amplitudeError : floor / 2);
  }
  return power > 0 ? { amplitude: Math.sqrt(power), amplitudeError: error } : undefined;
}
