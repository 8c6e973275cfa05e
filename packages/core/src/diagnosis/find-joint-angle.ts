import { numberText } from '../internal/number-text.js';
import { jointAngles } from '../line/joint-angles.js';
import type { ShaftLine } from '../line/types.js';
import { speedFluctuation } from '../motion/speed-fluctuation.js';
import type { Candidate, Evidence } from './evidence.js';
import { orderEvidence } from './order-evidence.js';
import { CARE } from './safety.js';

/** Joints at an angle: twice a turn, by as much as the angles of the line let expect. */
export function findJointAngle(evidence: Evidence): Candidate | undefined {
  const second = orderEvidence(evidence, 2);
  if (!second?.clear) return undefined;
  const first = orderEvidence(evidence, 1);
  const once = first?.reading.seen ? first.amplitude : 0;
  const bladed = evidence.line?.propeller?.blades === 2;
  return {
    cause: 'joint-angle',
    evidence: [
      ...second.sentences,
      once > 0
        ? `It is ${numberText(second.amplitude / once, 2)} times order 1; unbalance alone leaves order 2 well below order 1.`
        : 'Order 1 does not stand above the noise.',
      ...expected(evidence.line),
      ...(bladed ? ['A two-bladed propeller also pushes twice a turn.'] : []),
    ],
    check:
      'Lower the motor, or shim it, so that the joint runs at half its angle, and record the same speed again.',
    outcomes: [
      { result: 'order 2 falls to a half or less', means: 'the angle was the cause' },
      { result: 'it stays', means: 'look for shafts that miss each other sideways or a worn joint' },
    ],
    rivals: [
      ...(bladed
        ? [
            {
              cause: 'blade-pass' as const,
              why: 'Two blades push twice a turn too: with the propeller off that goes, the joint’s push stays in part.',
            },
          ]
        : []),
      {
        cause: 'misalignment',
        why: 'Shafts that miss each other push twice a turn too, but once a turn and along the shaft as well.',
      },
    ],
    caution: CARE,
    orders: [2],
  };
}

/** What the line itself lets expect twice a turn. */
function expected(line: ShaftLine | undefined): string[] {
  if (line === undefined) {
    return [
      'Without a description of the line, shafts that miss each other or a two-bladed propeller may do the same.',
    ];
  }
  const bends = jointAngles(line).filter((_, i) => line.joints[i]?.kind === 'universal');
  if (bends.length === 0) return ['The line has no universal joint, which speaks against it.'];
  const { degree } = speedFluctuation(line);
  const degrees = bends.map((angle) => `${numberText((angle * 180) / Math.PI, 2)}°`).join(' and ');
  const swing = `${numberText(100 * degree, 2)} %`;
  const joints =
    bends.length === 1 ? `Its universal joint at ${degrees} lets` : `Its universal joints at ${degrees} let`;
  return [`${joints} the propeller shaft gain and lose ${swing} of its speed, twice a turn.`];
}
