import { numberText } from '../internal/number-text.js';
import type { Candidate, Evidence } from './evidence.js';
import { orderEvidence } from './order-evidence.js';
import { CARE } from './safety.js';

/** A bend: once a turn, along the shaft as well as across it, where the axes are known. */
export function findBentShaft(evidence: Evidence): Candidate | undefined {
  const first = orderEvidence(evidence, 1);
  if (!first?.clear) return undefined;
  const { channels } = first.measurement;
  const along = channels.find(({ channel }) => channel === evidence.axial);
  const across = Math.max(
    0,
    ...channels.filter((one) => one !== along && one.unit === along?.unit).map(({ amplitude }) => amplitude),
  );
  const runout = evidence.line?.shafts.find((shaft) => (shaft.runout ?? 0) > 0);
  return {
    cause: 'bent-shaft',
    evidence: [
      ...first.sentences,
      along === undefined || across === 0
        ? 'A bend also pushes along the shaft; which axis lies along it is not known here, so that it can only be guessed at.'
        : `Along the shaft it is ${numberText(along.amplitude / across, 2)} times what it is across; unbalance pushes across alone.`,
      ...(runout?.runout === undefined
        ? []
        : [`The ${runout.name} is entered with ${numberText(1000 * runout.runout, 2)} mm of run-out.`]),
    ],
    check: 'Take the shaft out and roll it on glass, or turn it in its bushes against a fixed pointer.',
    outcomes: [
      {
        result: 'a sheet of paper (0.1 mm) passes under it or between it and the pointer',
        means: 'the shaft is bent: straighten or replace it',
      },
      { result: 'it runs true', means: 'balance the propeller, then look at the joint' },
    ],
    rivals: [
      { cause: 'unbalance', why: 'Unbalance is the commoner cause of order 1, but pushes across the shaft.' },
      { cause: 'misalignment', why: 'Parts out of line push along the shaft too, but twice a turn as well.' },
    ],
    caution: CARE,
    orders: [1],
  };
}
