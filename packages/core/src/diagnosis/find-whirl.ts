import { numberText } from '../internal/number-text.js';
import { criticalSpeeds } from '../whirl/critical-speeds.js';
import { MechanismError } from '../whirl/mechanism-error.js';
import type { ShaftLine } from '../line/types.js';
import type { Evidence, RuleFinding } from './evidence.js';
import { orderEvidence } from './order-evidence.js';
import { ramp } from './ramp.js';
import { rpmText } from './rpm-text.js';
import { HANDS_OFF, SPIN_GUARDED } from './safety.js';

/** Share of a critical speed within which whirl is to be reckoned with; common practice. */
const MARGIN = 0.25;

/** Whirl: once a turn, at a speed near a predicted critical speed of the line. */
export function findWhirl(evidence: Evidence): RuleFinding | undefined {
  const first = orderEvidence(evidence, 1);
  if (evidence.line === undefined || !first?.clear) return undefined;
  const critical = nearest(evidence.line, evidence.speed);
  if (critical === undefined) return undefined;
  const away = evidence.speed / critical - 1;
  const lead = first.amplitude / Math.max(evidence.strongest, first.amplitude);
  if (Math.abs(away) > MARGIN || lead < 0.5) return undefined;
  const confidence =
    (0.35 + 0.4 * (1 - ramp(Math.abs(away), 0.05, MARGIN))) * ramp(lead, 0.2, 0.9) * first.trust;
  const side = away < 0 ? 'below' : 'above';
  return {
    finding: {
      cause: 'whirl',
      confidence,
      evidence: [
        ...first.sentences,
        `${rpmText(evidence.speed)} is ${numberText(100 * Math.abs(away), 2)} % ${side} a predicted critical speed of ${rpmText(critical)}.`,
        'The prediction rests on how firmly the bushes hold, which can move it by half.',
      ],
      nextCheck: `Record the same line 15 % slower. If order 1 falls by much more than the square of the speed (to well under 70 %), the line whirls: lower the speed, or shorten or stiffen the shaft; if it falls by about that, it is plain unbalance. ${HANDS_OFF} ${SPIN_GUARDED}`,
    },
    orders: [1],
    frequencies: [],
  };
}

function nearest(line: ShaftLine, speed: number): number | undefined {
  try {
    const speeds = (['forward', 'backward'] as const).flatMap((whirl) =>
      criticalSpeeds(line, { whirl, count: 3 }).map((critical) => critical.speed),
    );
    return speeds.sort((a, b) => Math.abs(a - speed) - Math.abs(b - speed))[0];
  } catch (error) {
    // A line that is not held has no critical speed; what the recording says still stands.
    if (error instanceof MechanismError) return undefined;
    throw error;
  }
}
