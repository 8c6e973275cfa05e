import { listText } from '../internal/list-text.js';
import { numberText } from '../internal/number-text.js';
import type { ShaftLine } from '../line/types.js';
import type { YokePhase } from '../motion/types.js';
import { yokePhase } from '../motion/yoke-phase.js';
import type { Candidate, Evidence } from './evidence.js';
import { jointsCancel } from './joints-cancel.js';
import { orderEvidence } from './order-evidence.js';
import { CARE } from './safety.js';

/** rad; nobody sets a yoke finer by eye. */
const LEAST_TURN = (0.5 * Math.PI) / 180;

/** Two joints that ought to cancel and do not: twice a turn on a line of two universal joints or more. */
export function findJointPhase(evidence: Evidence): Candidate | undefined {
  const { line } = evidence;
  const second = orderEvidence(evidence, 2);
  const joints = line?.joints.filter(({ kind }) => kind === 'universal').length ?? 0;
  if (line === undefined || joints < 2 || !second?.clear) return undefined;
  const phase = yokePhase(line);
  const cancels = jointsCancel(line);
  return {
    cause: 'joint-phase',
    evidence: [...second.sentences, asDescribed(joints, phase, cancels)],
    check: checkOf(line, phase),
    outcomes: [
      { result: 'order 2 falls', means: 'the yokes were out of phase: lock them there' },
      {
        result: 'they stood so already or it stays',
        means: 'measure both joint angles, which have to be equal within 1°',
      },
    ],
    rivals: [
      {
        cause: 'joint-angle',
        why: cancels
          ? 'The angles as described cancel; they would have to be other than described.'
          : 'Angles that differ push twice a turn too, however the yokes stand.',
      },
      { cause: 'misalignment', why: 'Shafts that miss each other push once a turn as well.' },
    ],
    caution: CARE,
    orders: [2],
  };
}

function asDescribed(joints: number, { degree, degreeAtBest }: YokePhase, cancels: boolean): string {
  if (cancels) {
    return `As described, the ${joints} joints cancel to ${percent(degree)} of fluctuation, so that yokes or angles would have to stand other than described.`;
  }
  return `As described, the ${joints} joints leave ${percent(degree)} of fluctuation, twice a turn; with the yokes at their best it would be ${percent(degreeAtBest)}.`;
}

/** What to turn, by the description; where that has the yokes at their best, how they should stand. */
function checkOf(line: ShaftLine, { shafts }: YokePhase): string {
  const steps = shafts
    .filter(({ turn }) => Math.abs(turn) > LEAST_TURN)
    .map(
      ({ shaft, turn, sense }) =>
        `the propeller-end half of the ${line.shafts[shaft]?.name ?? 'shaft between'} ${numberText((Math.abs(turn) * 180) / Math.PI, 2)}° ${sense}`,
    );
  if (steps.length === 0) {
    return 'Look along each shaft between the joints: its yokes should stand as described, which is each in the plane of its own joint at once. Set them so and record the same speed again.';
  }
  return `If the yokes stand as described, turn ${listText(steps)}, seen looking aft from the motor, and record the same speed again.`;
}

function percent(share: number): string {
  return `${numberText(100 * share, 2)} %`;
}
