import { numberText } from '../internal/number-text.js';
import { jointAngles } from '../line/joint-angles.js';
import type { ShaftLine } from '../line/types.js';
import { speedFluctuation } from '../motion/speed-fluctuation.js';
import type { Evidence, RuleFinding } from './evidence.js';
import { orderEvidence } from './order-evidence.js';
import { ramp } from './ramp.js';
import { HANDS_OFF, SPIN_GUARDED } from './safety.js';

/** Joints at an angle: twice a turn, by as much as the angles of the line let expect. */
export function findJointAngle(evidence: Evidence): RuleFinding | undefined {
  const second = orderEvidence(evidence, 2);
  if (!second?.clear) return undefined;
  const first = orderEvidence(evidence, 1);
  const once = first?.reading.seen ? first.amplitude : 0;
  const ratio = once > 0 ? second.amplitude / once : Infinity;
  if (ratio < 0.4) return undefined;
  const line = predicted(evidence.line);
  const bladed = evidence.line?.propeller?.blades === 2;
  const share = 0.6 + 0.4 * ramp(second.amplitude / evidence.strongest, 0.1, 0.7);
  const base = (0.3 + 0.4 * ramp(ratio, 0.4, 1.6)) * share;
  return {
    finding: {
      cause: 'joint-angle',
      confidence: Math.min(0.9, base * line.factor * second.trust * (bladed ? 0.6 : 1)),
      evidence: [
        ...second.sentences,
        once > 0
          ? `It is ${numberText(ratio, 2)} times order 1; unbalance alone leaves order 2 well below order 1.`
          : 'Order 1 does not stand above the noise.',
        ...line.sentences,
        ...(bladed ? ['A two-bladed propeller also pushes twice a turn.'] : []),
      ],
      nextCheck: `Lower the motor, or shim it, so that the joint runs at half its angle, and record the same speed again. If order 2 falls to about a quarter, the angle was the cause; if it stays, look for shafts that miss each other sideways or a worn joint. ${HANDS_OFF} ${SPIN_GUARDED}`,
    },
    orders: [2],
    frequencies: [],
  };
}

/** What the line itself lets expect twice a turn, as sentences and as a factor on confidence. */
function predicted(line: ShaftLine | undefined): { factor: number; sentences: string[] } {
  if (line === undefined) {
    return {
      factor: 0.8,
      sentences: [
        'Without a description of the line, shafts that miss each other or a two-bladed propeller may do the same.',
      ],
    };
  }
  const bends = jointAngles(line).filter((_, i) => line.joints[i]?.kind === 'universal');
  if (bends.length === 0) {
    return { factor: 0.3, sentences: ['The line has no universal joint, which speaks against it.'] };
  }
  const { degree, orders } = speedFluctuation(line);
  const twice = orders.find(({ order }) => order === 2)?.amplitude ?? 0;
  const degrees = bends.map((angle) => `${numberText((angle * 180) / Math.PI, 2)}°`).join(' and ');
  const swing = `${numberText(100 * degree, 2)} %`;
  const joints =
    bends.length === 1 ? `Its universal joint at ${degrees} lets` : `Its universal joints at ${degrees} let`;
  return {
    factor: 0.6 + 0.6 * ramp(twice, 0.0005, 0.01),
    sentences: [`${joints} the propeller shaft gain and lose ${swing} of its speed, twice a turn.`],
  };
}
