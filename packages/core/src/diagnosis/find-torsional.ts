import { numberText } from '../internal/number-text.js';
import { assess } from '../study/assess.js';
import { MechanismError } from '../whirl/mechanism-error.js';
import type { ShaftLine } from '../line/types.js';
import type { Candidate, Evidence } from './evidence.js';
import { orderEvidence } from './order-evidence.js';
import { ramp } from './ramp.js';
import { rpmText } from './rpm-text.js';
import { CARE } from './safety.js';

/** A band in which the line swings in twist, by prediction, and the order that drives it standing strong. */
export function findTorsional(evidence: Evidence): Candidate | undefined {
  const { line, speed } = evidence;
  if (line === undefined) return undefined;
  const band = bandsOf(line, speed).find(({ from, to }) => speed >= from && speed <= to);
  const driven = band === undefined ? undefined : orderEvidence(evidence, band.order);
  if (band === undefined || !driven?.clear || driven.share < 0.3) return undefined;
  return {
    cause: 'torsional-resonance',
    evidence: [
      ...driven.sentences,
      `Order ${band.order} drives the line in twist from ${rpmText(band.from)} to ${rpmText(band.to)} by prediction, and it runs at ${rpmText(speed)}.`,
      `It is ${numberText(100 * driven.share, 2)} % of the strongest line; a swing in twist reaches the hull only through the motor mount.`,
    ],
    check: 'Record the same line 15 % slower.',
    outcomes: [
      {
        result: `order ${band.order} falls to a third or less`,
        means: 'keep out of that band, or change the joint angle that drives it',
      },
      { result: 'it hardly falls', means: 'it is not a resonance: look at the joint and the blades' },
    ],
    rivals: [
      { cause: 'joint-angle', why: 'A joint pushes at all speeds, not only in a band.' },
      { cause: 'blade-pass', why: 'So do the blades.' },
    ],
    caution: CARE,
    orders: [band.order],
    // No swing in twist is among the planted faults, and the model knows no damping.
    judged: 0.12 + 0.18 * ramp(driven.share, 0.3, 1),
  };
}

function bandsOf(line: ShaftLine, speed: number): { from: number; to: number; order: number }[] {
  try {
    return assess(line, { speed }).avoidBands.filter(({ motion }) => motion === 'twist');
  } catch (error) {
    if (error instanceof MechanismError) return [];
    throw error;
  }
}
