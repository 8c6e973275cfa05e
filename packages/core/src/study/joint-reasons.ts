import type { ShaftLine } from '../line/types.js';
import { PLAIN_PIN_LIMIT } from '../motion/plain-pin-limit.js';
import type { SpeedFluctuation } from '../motion/types.js';
import { makeReason } from './make-reason.js';
import { figure } from './statement.js';
import type { JointAssessment, Reason } from './types.js';

/** Rule of the makers of cardan shafts: the residual fluctuation of a line stays under that of one joint at 3°. */
const SMOOTH = 0.0027;

/**
 * Our choice, no source: the limit is one of wear, and the verdict speaks of shaking; four times past it counts as near what a
 * joint bears, ten times as beyond.
 */
const WORN = { near: 4, inside: 10 } as const;

interface Facts {
  readonly line: ShaftLine;
  readonly speed: number;
  readonly joints: readonly JointAssessment[];
  readonly fluctuation: SpeedFluctuation;
}

/** What the angles of the joints say: their makers' limits, wear and rattle, and how unevenly the propeller turns. */
export function jointReasons(facts: Facts): Reason[] {
  return [...angleReasons(facts), ...fluctuationReasons(facts)];
}

function angleReasons({ line, speed, joints }: Facts): Reason[] {
  return joints.flatMap(({ index, angle, kind }) => {
    const found: Reason[] = [];
    const name = `Joint ${index + 1}`;
    const most = line.joints[index]?.maxAngle;
    if (most !== undefined && angle > most) {
      found.push(
        makeReason('joint-angle-limit', {
          severity: 'inside',
          template: `${name} stands at {angle}; its maker allows {most}.`,
          figures: { angle: figure('angle', angle), most: figure('angle', most) },
          source: 'the joint’s own figure, as entered',
        }),
      );
    }
    const product = speed * angle;
    if (kind === 'universal' && product > PLAIN_PIN_LIMIT) {
      found.push(
        makeReason('speed-times-angle', {
          severity: wornBy(product / PLAIN_PIN_LIMIT),
          template: `${name} at {angle} and {speed} comes to {product}; joints with plain pins wear fast and rattle above {most}.`,
          figures: {
            angle: figure('angle', angle),
            speed: figure('speed', speed),
            product: figure('speed-angle', product),
            most: figure('speed-angle', PLAIN_PIN_LIMIT),
          },
          source: 'published advice of makers of plain-pin joints: rpm × degrees at most 15 000',
        }),
      );
    }
    return found;
  });
}

function fluctuationReasons({ fluctuation }: Facts): Reason[] {
  if (fluctuation.degree <= SMOOTH) return [];
  return [
    makeReason('fluctuation', {
      severity: 'note',
      template:
        'The propeller’s speed swings by {degree} within each turn, twice a turn; cardan shafts are held to {most}.',
      figures: { degree: figure('share', fluctuation.degree), most: figure('share', SMOOTH) },
      source: 'rule of makers of cardan shafts: residual fluctuation at most 0.0027, one joint at 3°',
    }),
  ];
}

function wornBy(times: number): Reason['severity'] {
  if (times > WORN.inside) return 'inside';
  return times > WORN.near ? 'near' : 'note';
}
