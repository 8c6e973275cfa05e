import { numberText } from '../internal/number-text.js';
import type { Evidence, RuleFinding } from './evidence.js';
import { orderEvidence } from './order-evidence.js';
import { ramp } from './ramp.js';
import { HANDS_OFF, SPIN_GUARDED } from './safety.js';

/**
 * Unbalance: once a turn, and little else.
 *
 * A bent shaft and a coupling bored off centre shake once a turn as well, so one recording never makes it certain.
 */
export function findUnbalance(evidence: Evidence): RuleFinding | undefined {
  const first = orderEvidence(evidence, 1);
  if (!first?.clear) return undefined;
  const others = evidence.readings.filter(({ order, seen }) => seen && order !== 1);
  const next = Math.max(0, ...others.map(({ order }) => orderEvidence(evidence, order)?.amplitude ?? 0));
  const lead = next > 0 ? first.amplitude / next : Infinity;
  if (lead < 0.5) return undefined;
  // A first order that is small beside a line of another kind is not what shakes the model.
  const share = 0.6 + 0.4 * ramp(first.amplitude / evidence.strongest, 0.1, 0.7);
  const confidence = (0.3 + 0.45 * ramp(lead, 0.5, 3)) * share * first.trust;
  return {
    finding: {
      cause: 'unbalance',
      confidence,
      evidence: [
        ...first.sentences,
        Number.isFinite(lead)
          ? `It is ${numberText(lead, 2)} times the next strongest order.`
          : 'No other order of shaft speed stands above the noise.',
        'Unbalance, a bent shaft and a joint or hub off centre all shake once a turn; the order alone does not say which.',
      ],
      nextCheck: `Run at the same speed with the propeller off. If order 1 falls to a third or less, balance the propeller; if it stays, turn the joint half a turn on the shaft: a change points to the joint, none to a bent shaft. ${HANDS_OFF} ${SPIN_GUARDED}`,
    },
    orders: [1],
    frequencies: [],
  };
}
