import { numberText } from '../internal/number-text.js';
import type { Evidence, RuleFinding } from './evidence.js';
import { orderEvidence } from './order-evidence.js';
import { ramp } from './ramp.js';
import { HANDS_OFF, SPIN_GUARDED } from './safety.js';

/** Blades passing hull, rudder or strut: blade count × shaft speed. */
export function findBladePass(evidence: Evidence): RuleFinding | undefined {
  const blades = evidence.line?.propeller?.blades ?? 0;
  const pass = blades < 2 ? undefined : orderEvidence(evidence, blades);
  if (!pass?.clear) return undefined;
  const share = pass.amplitude / Math.max(evidence.strongest, pass.amplitude);
  if (share < 0.1) return undefined;
  const again = clearPlace(evidence, 2 * blades);
  const rivalled = blades === 2 && hasUniversalJoint(evidence);
  const base = 0.35 + 0.3 * ramp(share, 0.1, 0.8) + (again === undefined ? 0 : 0.15);
  return {
    finding: {
      cause: 'blade-pass',
      confidence: base * pass.trust * (rivalled ? 0.6 : 1),
      evidence: [
        ...pass.sentences,
        `That is the ${blades} blades passing, ${numberText(100 * share, 2)} % of the strongest line.`,
        ...(again === undefined ? [] : [`Twice the blade order stands as well, at ${numberText(again)} Hz.`]),
        ...(rivalled ? ['A universal joint at an angle also pushes twice a turn.'] : []),
      ],
      nextCheck: NEXT_CHECK,
    },
    orders: again === undefined ? [blades] : [blades, 2 * blades],
    frequencies: [],
  };
}

/** Hz where the order clearly shows, if it does. */
function clearPlace(evidence: Evidence, order: number): number | undefined {
  const found = orderEvidence(evidence, order);
  return found?.clear === true ? found.reading.apparentFrequency : undefined;
}

function hasUniversalJoint({ line }: Evidence): boolean {
  return line?.joints.some(({ kind }) => kind === 'universal') ?? false;
}

const NEXT_CHECK = `Run at the same speed with the propeller off. If the blade order goes, look at the gap between blade tips and hull, at a strut or rudder close to the blades, and at blades unlike each other; if it stays, it is not the blades. ${HANDS_OFF} ${SPIN_GUARDED}`;
