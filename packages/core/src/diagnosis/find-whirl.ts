import { numberText } from '../internal/number-text.js';
import { jointAngles } from '../line/joint-angles.js';
import type { ShaftLine } from '../line/types.js';
import type { Whirl } from '../whirl/types.js';
import type { Candidate, Evidence, OrderEvidence } from './evidence.js';
import { nearestCritical, type NearestCritical } from './nearest-critical.js';
import { orderEvidence } from './order-evidence.js';
import { ramp } from './ramp.js';
import { rpmText } from './rpm-text.js';
import { CARE } from './safety.js';

/** Share of a critical speed within which whirl is to be reckoned with; common practice. */
const MARGIN = 0.25;
/** Least share of the strongest line at which an order may be that of a whirl. Our choice. */
const LEAST = 0.5;
/** rad; a joint that stands straighter pushes too little. Our choice. */
const BENT = Math.PI / 180;

interface Met {
  readonly driven: OrderEvidence;
  readonly order: number;
  readonly critical: NearestCritical;
  /** Share by which the line runs above the critical speed. */
  readonly away: number;
}

/** Whirl: an order that can drive one stands strong, at a speed where it meets a predicted whirl of the line. */
export function findWhirl(evidence: Evidence): Candidate | undefined {
  const { line } = evidence;
  if (line === undefined) return undefined;
  const [met] = drivesOf(line)
    .flatMap((drive) => meeting(evidence, line, drive) ?? [])
    .sort((a, b) => b.driven.share - a.driven.share);
  return met === undefined ? undefined : candidate(evidence.speed, met);
}

interface Drive {
  readonly order: number;
  readonly whirls: readonly Whirl[];
}

/** Unbalance, joints at an angle, blades: each with the ways in which it can make the line whirl. */
function drivesOf(line: ShaftLine): Drive[] {
  const angles = jointAngles(line);
  const bent = line.joints.some(({ kind }, i) => kind === 'universal' && (angles[i] ?? 0) > BENT);
  const blades = line.propeller?.blades ?? 0;
  const whirls = ['forward', 'backward'] as const;
  return [
    { order: 1, whirls: ['forward'] },
    ...(bent ? [{ order: 2, whirls }] : []),
    ...(blades > 1 && !(bent && blades === 2) ? [{ order: blades, whirls }] : []),
  ];
}

function meeting(evidence: Evidence, line: ShaftLine, { order, whirls }: Drive): Met | undefined {
  const driven = orderEvidence(evidence, order);
  if (!driven?.clear || driven.share < LEAST) return undefined;
  const critical = nearestCritical(line, { speed: evidence.speed, order, whirls });
  if (critical === undefined) return undefined;
  const away = evidence.speed / critical.speed - 1;
  return Math.abs(away) > MARGIN ? undefined : { driven, order, critical, away };
}

function candidate(speed: number, { driven, order, critical, away }: Met): Candidate {
  const [from, to] = [(1 - MARGIN) * critical.speed, (1 + MARGIN) * critical.speed];
  const side = away < 0 ? 'below' : 'above';
  return {
    cause: 'whirl',
    evidence: [
      ...driven.sentences,
      `${rpmText(speed)} is ${numberText(100 * Math.abs(away), 2)} % ${side} a predicted critical speed of ${rpmText(critical.speed)}, where order ${order} meets a ${critical.whirl} whirl of the line; the band to reckon with goes from ${rpmText(from)} to ${rpmText(to)}.`,
      'The prediction rests on how firmly the bushes hold: between pinned and clamped a critical speed moves by up to 2.27 times.',
    ],
    check: 'Record the same line 15 % slower.',
    outcomes: [
      {
        result: `order ${order} falls by much more than the square of the speed (to well under 70 %)`,
        means: 'the line whirls: lower the speed, or shorten or stiffen the shaft',
      },
      { result: 'it falls by about that', means: `it is plain ${plainPush(order)}` },
    ],
    rivals: rivalsOf(order),
    caution: CARE,
    orders: [order],
    // Only whirl of order 1 is among the planted faults.
    ...(order === 1 ? {} : { judged: 0.12 + 0.18 * (1 - ramp(Math.abs(away), 0.05, MARGIN)) * driven.share }),
  };
}

function plainPush(order: number): string {
  if (order === 1) return 'unbalance';
  return order === 2 ? 'push of joints or blades' : 'push of the blades';
}

function rivalsOf(order: number): Candidate['rivals'] {
  if (order === 1) {
    return [
      {
        cause: 'unbalance',
        why: 'Unbalance is what drives a whirl; away from the critical speed it would be small by itself.',
      },
      { cause: 'bent-shaft', why: 'A bend drives a whirl too; roll the shaft to see.' },
    ];
  }
  return [
    order === 2
      ? {
          cause: 'joint-angle',
          why: 'A joint at an angle pushes twice a turn at all speeds, not only in a band.',
        }
      : { cause: 'blade-pass', why: 'Blades push at all speeds, not only in a band.' },
  ];
}
