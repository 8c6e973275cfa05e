import { listText } from '../internal/list-text.js';
import { numberText } from '../internal/number-text.js';
import type { Candidate, Evidence, OrderEvidence } from './evidence.js';
import { orderEvidence } from './order-evidence.js';
import { ramp } from './ramp.js';
import { CARE, SPIN_GUARDED } from './safety.js';

/** Strong orders that no cause is known for, or that the sampling lays on top of each other. */
export function findUnexplained(evidence: Evidence): Candidate | undefined {
  const blades = evidence.line?.propeller?.blades ?? 0;
  const isClear = (order: number): boolean => orderEvidence(evidence, order)?.clear ?? false;
  const known = [1, 2, blades].filter(isClear);
  if (known.includes(blades)) known.push(2 * blades);
  const [strong] = evidence.readings
    .filter(({ order, seen }) => seen && Number.isInteger(order) && !known.includes(order))
    .flatMap(({ order }) => orderEvidence(evidence, order) ?? [])
    .filter(({ share, measurement }) => share > 0.4 && !measurement.inseparableFrom.some(isClear))
    .sort((a, b) => b.share - a.share);
  if (strong === undefined) return undefined;
  return strong.measurement.inseparableFrom.length > 0 ? shared(evidence, strong) : alone(strong);
}

function shared(evidence: Evidence, { measurement, sentences, share }: OrderEvidence): Candidate {
  const { order, inseparableFrom, apparentFrequency } = measurement;
  const rivals = [order, ...inseparableFrom].sort((a, b) => a - b);
  return {
    cause: 'unexplained',
    evidence: [
      sentences[0] ?? '',
      `Orders ${listText(rivals)} all appear at ${numberText(apparentFrequency)} Hz at this rate, so none of them can be blamed from this recording alone.`,
    ],
    check: 'Record again 15 % slower, or with a faster recorder.',
    outcomes: rivals.slice(0, 3).map((one) => ({
      result: `the line moves by 15 % of ${numberText((one * evidence.speed) / (2 * Math.PI))} Hz`,
      means: `it is order ${one}`,
    })),
    rivals: rivalCauses(rivals),
    caution: SPIN_GUARDED,
    orders: rivals,
    judged: 0.2 + 0.3 * ramp(share, 0.4, 1),
  };
}

function alone({ measurement: { order, apparentFrequency }, sentences }: OrderEvidence): Candidate {
  return {
    cause: 'unexplained',
    evidence: [
      ...sentences,
      `Order ${order} is among the strongest, and no cause that is looked for explains it.`,
      'A part of hull or mount that rings near that frequency lifts whatever order comes by; so do gears, belts and poles.',
    ],
    check:
      'Record once more 15 % slower, then take one part off at a time, in this order: propeller, joint, then the motor alone.',
    outcomes: [
      {
        result: `order ${order} shrinks by far more than the others when the speed changes`,
        means: `something rings near ${numberText(apparentFrequency)} Hz`,
      },
      { result: 'it goes with a part', means: 'that part makes it' },
    ],
    rivals: [
      { cause: 'structural-resonance', why: 'One speed alone cannot tell a resonance from a strong source.' },
      { cause: 'looseness', why: 'A loose part would show a row of orders, not one.' },
    ],
    caution: CARE,
    orders: [order],
  };
}

function rivalCauses(orders: readonly number[]): Candidate['rivals'] {
  return [
    { cause: 'structural-resonance', why: 'A part that rings just there cannot be ruled out either.' },
    ...(orders.includes(1)
      ? [{ cause: 'unbalance' as const, why: 'Order 1 is among those that fall there.' }]
      : []),
    ...(orders.includes(2)
      ? [{ cause: 'joint-angle' as const, why: 'Order 2 is among those that fall there.' }]
      : []),
  ];
}
