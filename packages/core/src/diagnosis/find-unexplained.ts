import { listText } from '../internal/list-text.js';
import { numberText } from '../internal/number-text.js';
import type { Evidence, RuleFinding } from './evidence.js';
import { orderEvidence } from './order-evidence.js';
import { ramp } from './ramp.js';
import { SPIN_GUARDED } from './safety.js';

/** Strong orders that no other finding explains, or that the sampling lays on top of each other. */
export function findUnexplained(evidence: Evidence, others: readonly RuleFinding[]): RuleFinding | undefined {
  const explained = new Set(others.flatMap(({ orders }) => orders));
  const left = evidence.readings
    .filter(
      ({ order, seen, inseparableFrom }) =>
        seen && !explained.has(order) && !inseparableFrom.some((o) => explained.has(o)),
    )
    .flatMap(({ order }) => orderEvidence(evidence, order) ?? [])
    .filter(({ amplitude }) => amplitude > 0.5 * evidence.strongest)
    .sort((a, b) => b.amplitude - a.amplitude);
  const [strong] = left;
  if (strong === undefined) return undefined;
  const { order, inseparableFrom, apparentFrequency } = strong.measurement;
  const shared = inseparableFrom.length > 0;
  const rivals = [order, ...inseparableFrom].sort((a, b) => a - b);
  return {
    finding: {
      cause: 'unexplained',
      confidence: 0.2 + 0.3 * ramp(strong.amplitude / evidence.strongest, 0.5, 1),
      evidence: shared
        ? [
            strong.sentences[0] ?? '',
            `Orders ${listText(rivals)} all appear at ${numberText(apparentFrequency)} Hz at this rate, so none of them can be blamed from this recording alone.`,
          ]
        : [
            ...strong.sentences,
            `Order ${order} is among the strongest, and no cause that is looked for explains it.`,
          ],
      nextCheck: shared
        ? `Record again 15 % slower, or with a faster recorder. Orders move by different amounts, so the line that follows tells which it is. ${SPIN_GUARDED}`
        : `Take one part off at a time, in this order: propeller, joint, then the motor alone, each at the same speed. The step at which the line goes names the part. ${SPIN_GUARDED}`,
    },
    orders: [order],
    frequencies: [],
  };
}
