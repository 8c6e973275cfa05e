import { listText } from '../internal/list-text.js';
import { numberText } from '../internal/number-text.js';
import { amplitudeText } from './amplitude-text.js';
import type { Candidate, Evidence } from './evidence.js';
import { mainsLine } from './mains-line.js';
import { orderEvidence } from './order-evidence.js';
import { ramp } from './ramp.js';
import { SPIN_GUARDED } from './safety.js';
import { shareOf } from './share-of.js';
import { SWITCHING } from './switching.js';

/** What is smaller beside the strongest line is not what shakes the model. */
const LEAST_SHARE = 0.05;

/** Electrical: a line at a mains frequency, or orders that count the motor's poles. */
export function findElectrical(evidence: Evidence): Candidate | undefined {
  return fromMains(evidence) ?? fromPoles(evidence) ?? fromSwitching(evidence);
}

function fromMains(evidence: Evidence): Candidate | undefined {
  const { strangers, measured, recording } = evidence;
  const place = { sampleRate: recording.sampleRate, resolution: measured.resolution };
  const lines = strangers.flatMap((peak) => {
    const mains = mainsLine(peak.frequency, place);
    const share = shareOf(evidence, peak.amplitude, peak.unit);
    return mains === undefined || share < LEAST_SHARE ? [] : [{ peak, mains, share }];
  });
  const [strong] = lines;
  if (strong === undefined) return undefined;
  const folded = lines.some(({ mains }) => mains > recording.sampleRate / 2);
  return {
    cause: 'electrical',
    evidence: [
      ...lines.map(
        ({ peak, mains }) =>
          `A line at ${numberText(peak.frequency)} Hz with ${amplitudeText(peak.amplitude, peak.unit, 2)} on ${peak.channel} lies on ${mains} Hz, a mains frequency or its double${mains > recording.sampleRate / 2 ? ', folded' : ''}.`,
      ),
      `It is no multiple of shaft speed, and ${numberText(100 * strong.share, 2)} % of the strongest line.`,
    ],
    check: 'Record once more with the drive still and everything else as it was.',
    outcomes: [
      {
        result: 'the line is there too',
        means: 'it comes from the mains or a machine nearby and not from the shaft line',
      },
      { result: 'it is gone', means: 'run at another speed: a line that stays put is a resonance' },
    ],
    rivals: [
      {
        cause: 'structural-resonance',
        why: 'A part that rings at just a mains frequency would be a coincidence.',
      },
    ],
    caution: SPIN_GUARDED,
    orders: [],
    adjustment: folded ? -1 : 0,
  };
}

function fromPoles(evidence: Evidence): Candidate | undefined {
  const poles = evidence.line?.motor?.poles;
  if (poles === undefined) return undefined;
  const blades = evidence.line?.propeller?.blades ?? 0;
  const ordinary = [1, 2, blades, 2 * blades];
  const orders = [poles / 2, poles, 3 * poles]
    .filter((order) => !ordinary.includes(order))
    .flatMap((order) => orderEvidence(evidence, order) ?? [])
    .filter((found) => found.clear && found.share > 0.1);
  if (orders.length === 0) return undefined;
  const names = orders.map(({ reading }) => reading.order);
  return {
    cause: 'electrical',
    evidence: [
      ...orders.flatMap(({ sentences }) => sentences),
      `${orders.length === 1 ? 'Order' : 'Orders'} ${listText(names)} count the ${poles} poles of the motor.`,
    ],
    check: 'Run the motor alone, uncoupled, at the same speed.',
    outcomes: [
      { result: 'the line stays', means: 'it is the motor and its controller' },
      { result: 'it goes', means: 'it belongs to the shaft line' },
    ],
    rivals: [
      { cause: 'looseness', why: 'A loose part would show the orders between as well.' },
      {
        cause: 'structural-resonance',
        why: 'A panel that rings there would lift only the order that meets it.',
      },
    ],
    caution: SPIN_GUARDED,
    orders: names,
    judged: 0.35 + 0.2 * ramp(orders.length, 1, 2),
  };
}

function fromSwitching(evidence: Evidence): Candidate | undefined {
  const [peak] = evidence.strangers.filter(
    ({ frequency, amplitude, unit }) => frequency >= SWITCHING && shareOf(evidence, amplitude, unit) > 0.15,
  );
  if (peak === undefined) return undefined;
  const share = shareOf(evidence, peak.amplitude, peak.unit);
  return {
    cause: 'electrical',
    evidence: [
      `A line at ${numberText(peak.frequency, 4)} Hz with ${amplitudeText(peak.amplitude, peak.unit, 2)} on ${peak.channel} is no multiple of shaft speed and lies where motor controllers switch.`,
    ],
    check: 'Record the motor alone at two throttle settings.',
    outcomes: [
      {
        result: `the line stays at ${numberText(peak.frequency)} Hz`,
        means: 'it is the controller and does the shaft line no harm',
      },
      { result: 'it moves', means: 'it belongs to the motor' },
    ],
    rivals: [
      { cause: 'structural-resonance', why: 'Parts of a model seldom ring so high, and not for long.' },
    ],
    caution: SPIN_GUARDED,
    orders: [],
    judged: 0.3 + 0.2 * ramp(share, 0.15, 0.8),
  };
}
