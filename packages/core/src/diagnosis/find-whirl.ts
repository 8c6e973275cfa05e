import { numberText } from '../internal/number-text.js';
import type { Candidate, Evidence } from './evidence.js';
import { nearestCritical } from './nearest-critical.js';
import { orderEvidence } from './order-evidence.js';
import { rpmText } from './rpm-text.js';
import { CARE } from './safety.js';

/** Share of a critical speed within which whirl is to be reckoned with; common practice. */
const MARGIN = 0.25;

/** Whirl: once a turn, at a speed near a predicted critical speed of the line. */
export function findWhirl(evidence: Evidence): Candidate | undefined {
  const first = orderEvidence(evidence, 1);
  if (evidence.line === undefined || !first?.clear || first.share < 0.5) return undefined;
  const critical = nearestCritical(evidence.line, evidence.speed);
  if (critical === undefined) return undefined;
  const away = evidence.speed / critical - 1;
  if (Math.abs(away) > MARGIN) return undefined;
  const side = away < 0 ? 'below' : 'above';
  return {
    cause: 'whirl',
    evidence: [
      ...first.sentences,
      `${rpmText(evidence.speed)} is ${numberText(100 * Math.abs(away), 2)} % ${side} a predicted critical speed of ${rpmText(critical)}.`,
      'The prediction rests on how firmly the bushes hold, which can move it by half.',
    ],
    check: 'Record the same line 15 % slower.',
    outcomes: [
      {
        result: 'order 1 falls by much more than the square of the speed (to well under 70 %)',
        means: 'the line whirls: lower the speed, or shorten or stiffen the shaft',
      },
      { result: 'it falls by about that', means: 'it is plain unbalance' },
    ],
    rivals: [
      {
        cause: 'unbalance',
        why: 'Unbalance is what drives a whirl; away from the critical speed it would be small by itself.',
      },
      { cause: 'bent-shaft', why: 'A bend drives a whirl too; roll the shaft to see.' },
    ],
    caution: CARE,
    orders: [1],
  };
}
