import { numberText } from '../internal/number-text.js';
import type { Candidate, Evidence } from './evidence.js';
import { orderEvidence } from './order-evidence.js';
import { CARE } from './safety.js';

/** Blades passing hull, rudder or strut: blade count × shaft speed. */
export function findBladePass(evidence: Evidence): Candidate | undefined {
  const blades = evidence.line?.propeller?.blades ?? 0;
  const pass = blades < 2 ? undefined : orderEvidence(evidence, blades);
  if (!pass?.clear || pass.share < 0.05) return undefined;
  const again = clearPlace(evidence, 2 * blades);
  const rivalled = blades === 2 && hasUniversalJoint(evidence);
  return {
    cause: 'blade-pass',
    evidence: [
      ...pass.sentences,
      `That is the ${blades} blades passing, ${numberText(100 * pass.share, 2)} % of the strongest line.`,
      ...(again === undefined ? [] : [`Twice the blade order stands as well, at ${numberText(again)} Hz.`]),
      ...(rivalled ? ['A universal joint at an angle also pushes twice a turn.'] : []),
    ],
    check: 'Run at the same speed with the propeller off.',
    outcomes: [
      {
        result: 'the blade order goes',
        means:
          'look at the gap between blade tips and hull, at a strut or rudder close to the blades, and at blades unlike each other',
      },
      { result: 'it stays', means: 'it is not the blades' },
    ],
    rivals: [
      rivalled
        ? {
            cause: 'joint-angle',
            why: 'The joint pushes twice a turn too, without the sharp pulses that give twice the blade order.',
          }
        : { cause: 'looseness', why: 'Looseness would show the other orders of its row as well.' },
    ],
    caution: CARE,
    orders: again === undefined ? [blades] : [blades, 2 * blades],
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
