import { listText } from '../internal/list-text.js';
import { numberText } from '../internal/number-text.js';
import type { Candidate, Evidence } from './evidence.js';
import { orderEvidence } from './order-evidence.js';
import { CARE } from './safety.js';

/** Looseness: a row of orders, and half orders when it is bad. */
export function findLooseness(evidence: Evidence): Candidate | undefined {
  const stands = (order: number): boolean => {
    const found = orderEvidence(evidence, order);
    return found?.clear === true && found.share > 0.05;
  };
  const blades = evidence.line?.propeller?.blades ?? 0;
  const row = [1, 2, 3, 4, 5, 6].filter(stands);
  const own = row.filter((order) => order !== blades && order !== 2 * blades);
  const halves = [0.5, 1.5].filter(stands);
  if (own.length + 2 * halves.length < 4 || own.length < 2) return undefined;
  const orders = [...halves, ...row].sort((a, b) => a - b);
  return {
    cause: 'looseness',
    evidence: [
      `Orders ${listText(orders)} all stand above the noise, from ${sizes(evidence, orders)}.`,
      halves.length > 0
        ? 'Half orders come when a part lifts and lands every other turn.'
        : 'A row of orders comes when a part knocks once a turn; no half order was seen.',
    ],
    check: 'Go over grub screws, motor mount and bush seats, tighten each, and record again.',
    outcomes: [
      { result: 'the row of orders shrinks', means: 'that was it' },
      {
        result: 'it stays',
        means: 'try the joint for play between finger and thumb: play points to a worn joint',
      },
    ],
    rivals: [
      {
        cause: 'rubbing',
        why: 'A rub gives a row of orders too, but raises the noise between them, once a turn.',
      },
      {
        cause: 'misalignment',
        why: 'Shafts out of line show the first orders of such a row and no half orders.',
      },
    ],
    caution: CARE,
    orders,
  };
}

function sizes(evidence: Evidence, orders: readonly number[]): string {
  const amplitudes = orders.map((order) => orderEvidence(evidence, order)?.amplitude ?? 0);
  const unit = evidence.readings.find(({ order }) => order === orders[0])?.unit ?? '';
  return `${numberText(Math.min(...amplitudes), 2)} to ${numberText(Math.max(...amplitudes), 2)} ${unit}`;
}
