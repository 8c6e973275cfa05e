import { numberText } from '../internal/number-text.js';
import type { Candidate, Evidence } from './evidence.js';
import { orderEvidence } from './order-evidence.js';
import { CARE } from './safety.js';

/**
 * Unbalance: once a turn, and little else.
 *
 * A bent shaft and a coupling bored off centre shake once a turn as well, so one recording never makes it certain.
 */
export function findUnbalance(evidence: Evidence): Candidate | undefined {
  const first = orderEvidence(evidence, 1);
  if (!first?.clear) return undefined;
  const others = evidence.readings.filter(({ order, seen }) => seen && order !== 1);
  const next = Math.max(0, ...others.map(({ order }) => orderEvidence(evidence, order)?.amplitude ?? 0));
  return {
    cause: 'unbalance',
    evidence: [
      ...first.sentences,
      next > 0
        ? `It is ${numberText(first.amplitude / next, 2)} times the next strongest order.`
        : 'No other order of shaft speed stands above the noise.',
      'Unbalance, a bent shaft and a joint or hub off centre all shake once a turn; the order alone does not say which.',
    ],
    check: 'Run at the same speed with the propeller off.',
    outcomes: [
      { result: 'order 1 falls to a third or less', means: 'balance the propeller' },
      {
        result: 'it stays',
        means:
          'turn the joint half a turn on the shaft: a change points to the joint, none points to a bent shaft',
      },
    ],
    rivals: [
      {
        cause: 'bent-shaft',
        why:
          evidence.axial === undefined
            ? 'A bend shakes once a turn too, and along the shaft as well; which axis lies along the shaft is not known here.'
            : 'A bend would shake along the shaft nearly as much as across it.',
      },
      {
        cause: 'misalignment',
        why: 'A joint or hub off centre shakes once a turn too, and as a rule twice a turn as well.',
      },
      ...(evidence.line === undefined
        ? []
        : [
            {
              cause: 'whirl' as const,
              why: 'Whirl would need a critical speed close by, and would fall by far more than the square when the speed falls.',
            },
          ]),
    ],
    caution: CARE,
    orders: [1],
  };
}
