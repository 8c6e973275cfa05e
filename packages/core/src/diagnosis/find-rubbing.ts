import { numberText } from '../internal/number-text.js';
import { amplitudeText } from './amplitude-text.js';
import type { Candidate, Evidence } from './evidence.js';
import { orderEvidence } from './order-evidence.js';
import { CARE } from './safety.js';

/** Depth that no steady noise reaches by chance, judged over simulated recordings. */
const DEEP = 0.5;

/** Orders within half the rate below which folded ones may make a swell of their own. Our choice. */
const ENOUGH = 4;

/** A rub: noise that swells once a turn, beside order 1 and its row. */
export function findRubbing(evidence: Evidence): Candidate | undefined {
  const { modulation, noise } = evidence;
  // A slight swell without a single order is chance, or has nothing to do with the shaft.
  const placed = evidence.readings.some(({ seen }) => seen);
  if (!modulation.seen || !(placed || modulation.depth > DEEP)) return undefined;
  const first = orderEvidence(evidence, 1);
  const within = (Math.PI * evidence.recording.sampleRate) / evidence.speed;
  return {
    cause: 'rubbing',
    evidence: [
      `The noise between the orders, ${amplitudeText(noise.rms, noise.unit, 2)} rms, swells once a turn by ${numberText(100 * modulation.depth, 2)} % of its mean.`,
      `It is ${numberText(noise.share, 2)} times the strongest line.`,
      ...(first?.reading.seen ? first.sentences : []),
      ...(within < ENOUGH
        ? [
            `Only ${numberText(within, 2)} times shaft speed lies within half the sampling rate: higher orders fold, and what beats between them swells with the shaft as well.`,
          ]
        : []),
    ],
    check:
      'Turn the shaft slowly by hand through a whole turn, then feel each bush a minute after a short run.',
    outcomes: [
      {
        result: 'it drags at one place of the turn, or a bush is hot',
        means: 'something rubs there: look for a bright mark, give clearance, oil',
      },
      {
        result: 'it turns evenly and stays cool',
        means: 'look for a loose part that knocks once a turn',
      },
    ],
    rivals: [
      {
        cause: 'looseness',
        why: 'Knocks give clean lines in a row, often with half orders, on a low floor.',
      },
      { cause: 'unbalance', why: 'Unbalance leaves the noise between the orders steady.' },
    ],
    caution: CARE,
    orders: [1],
  };
}
