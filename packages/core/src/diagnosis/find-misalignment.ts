import { numberText } from '../internal/number-text.js';
import type { Candidate, Evidence } from './evidence.js';
import { orderEvidence } from './order-evidence.js';
import { CARE } from './safety.js';

/** Shafts that miss each other at a coupling: once and twice a turn together, along the shaft as well. */
export function findMisalignment(evidence: Evidence): Candidate | undefined {
  const [first, second] = [orderEvidence(evidence, 1), orderEvidence(evidence, 2)];
  if (!second?.clear) return undefined;
  const straight = evidence.line?.joints.every(({ kind }) => kind !== 'universal') ?? false;
  const once = first?.clear === true ? first.amplitude : 0;
  return {
    cause: 'misalignment',
    evidence: [
      ...second.sentences,
      once > 0
        ? `Order 1 stands beside it; order 2 is ${numberText(second.amplitude / once, 2)} times as large.`
        : 'Order 1 does not stand above the noise, which speaks against it.',
      ...(straight
        ? [
            'The line has no universal joint that would push twice a turn: a coupling bent at every turn does.',
          ]
        : []),
    ],
    check:
      'Loosen the motor mount, let the motor find its place with a rigid sleeve over both shaft ends in place of the joint, tighten and record the same speed again.',
    outcomes: [
      { result: 'order 2 falls', means: 'motor and shaft were out of line' },
      {
        result: 'it stays',
        means: 'look at the joint itself for wear and a bore off centre',
      },
    ],
    rivals: [
      {
        cause: 'joint-angle',
        why: straight
          ? 'The line is described without a universal joint.'
          : 'A universal joint at an angle pushes twice a turn with hardly any order 1.',
      },
      {
        cause: 'bent-shaft',
        why: 'A bend pushes along the shaft as well, but leaves order 2 small.',
      },
    ],
    caution: CARE,
    orders: [1, 2],
  };
}
