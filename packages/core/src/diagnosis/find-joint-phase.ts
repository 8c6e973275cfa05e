import { numberText } from '../internal/number-text.js';
import { speedFluctuation } from '../motion/speed-fluctuation.js';
import type { Candidate, Evidence } from './evidence.js';
import { orderEvidence } from './order-evidence.js';
import { CARE } from './safety.js';

/** Two joints that ought to cancel and do not: twice a turn on a line of two universal joints or more. */
export function findJointPhase(evidence: Evidence): Candidate | undefined {
  const { line } = evidence;
  const second = orderEvidence(evidence, 2);
  const joints = line?.joints.filter(({ kind }) => kind === 'universal').length ?? 0;
  if (line === undefined || joints < 2 || !second?.clear) return undefined;
  const { degree } = speedFluctuation(line);
  return {
    cause: 'joint-phase',
    evidence: [
      ...second.sentences,
      `As described, the ${joints} joints leave ${numberText(100 * degree, 2)} % of fluctuation; what is measured is more than a line whose joints cancel would show.`,
    ],
    check: 'Look along the shaft between the joints, and turn one yoke on it until both stand in one plane.',
    outcomes: [
      { result: 'order 2 falls', means: 'the yokes were out of phase: lock them there' },
      {
        result: 'they stood in one plane already or it stays',
        means: 'measure both joint angles, which have to be equal within 1°',
      },
    ],
    rivals: [
      {
        cause: 'joint-angle',
        why: 'The angles as described cancel; they would have to be other than described.',
      },
      { cause: 'misalignment', why: 'Shafts that miss each other push once a turn as well.' },
    ],
    caution: CARE,
    orders: [2],
  };
}
