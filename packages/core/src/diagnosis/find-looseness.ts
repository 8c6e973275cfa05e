import { listText } from '../internal/list-text.js';
import { numberText } from '../internal/number-text.js';
import type { Evidence, RuleFinding } from './evidence.js';
import { orderEvidence } from './order-evidence.js';
import { HANDS_OFF, SPIN_GUARDED } from './safety.js';

/** Looseness: a row of orders, and half orders when it is bad. */
export function findLooseness(evidence: Evidence): RuleFinding | undefined {
  const clear = (order: number): boolean => orderEvidence(evidence, order)?.clear ?? false;
  const strong = (order: number): boolean =>
    (orderEvidence(evidence, order)?.amplitude ?? 0) > 0.05 * evidence.strongest;
  const blades = evidence.line?.propeller?.blades ?? 0;
  const row = [1, 2, 3, 4, 5, 6].filter((order) => clear(order) && strong(order));
  const own = row.filter((order) => order !== blades && order !== 2 * blades);
  const halves = [0.5, 1.5].filter((order) => clear(order) && strong(order));
  if (own.length + 2 * halves.length < 4 || own.length < 2) return undefined;
  const orders = [...halves, ...row].sort((a, b) => a - b);
  const trust = Math.min(...orders.map((order) => orderEvidence(evidence, order)?.trust ?? 1));
  return {
    finding: {
      cause: 'looseness',
      confidence: Math.min(0.8, 0.22 + 0.06 * (own.length - 3) + 0.2 * halves.length) * trust,
      evidence: [
        `Orders ${listText(orders)} all stand above the noise, from ${sizes(evidence, orders)}.`,
        halves.length > 0
          ? 'Half orders come when a part lifts and lands every other turn.'
          : 'A row of orders comes when a part knocks once a turn; no half order was seen.',
      ],
      nextCheck: `Go over grub screws, motor mount and bush seats, tighten each, and record again. If the row of orders shrinks, that was it; if not, try the joint for play between finger and thumb: play points to a worn joint. ${HANDS_OFF} ${SPIN_GUARDED}`,
    },
    orders,
    frequencies: [],
  };
}

function sizes(evidence: Evidence, orders: readonly number[]): string {
  const amplitudes = orders.map((order) => orderEvidence(evidence, order)?.amplitude ?? 0);
  const unit = evidence.readings.find(({ order }) => order === orders[0])?.unit ?? '';
  return `${numberText(Math.min(...amplitudes), 2)} to ${numberText(Math.max(...amplitudes), 2)} ${unit}`;
}
