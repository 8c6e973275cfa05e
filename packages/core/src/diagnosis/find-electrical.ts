import { listText } from '../internal/list-text.js';
import { numberText } from '../internal/number-text.js';
import { amplitudeText } from './amplitude-text.js';
import type { Evidence, RuleFinding } from './evidence.js';
import { mainsLine } from './mains-line.js';
import { orderEvidence } from './order-evidence.js';
import { ramp } from './ramp.js';
import { SPIN_GUARDED } from './safety.js';
import { SWITCHING } from './switching.js';

/** Electrical: a line at a mains frequency, or orders that count the motor's poles. */
export function findElectrical(evidence: Evidence): RuleFinding | undefined {
  return fromMains(evidence) ?? fromPoles(evidence) ?? fromSwitching(evidence);
}

function fromMains(evidence: Evidence): RuleFinding | undefined {
  const { strangers, strongest, measured, recording } = evidence;
  const place = { sampleRate: recording.sampleRate, resolution: measured.resolution };
  const lines = strangers.flatMap((peak) => {
    const mains = mainsLine(peak.frequency, place);
    return mains === undefined ? [] : [{ peak, mains }];
  });
  const [strong] = lines;
  if (strong === undefined) return undefined;
  const folded = lines.some(({ mains }) => mains > recording.sampleRate / 2);
  const confidence =
    (0.4 + 0.2 * ramp(lines.length, 1, 2) + 0.1 * ramp(strong.peak.amplitude / strongest, 0, 0.5)) *
    (folded ? 0.6 : 1);
  return {
    finding: {
      cause: 'electrical',
      confidence,
      evidence: [
        ...lines.map(
          ({ peak, mains }) =>
            `A line at ${numberText(peak.frequency)} Hz with ${amplitudeText(peak.amplitude, peak.unit, 2)} on ${peak.channel} lies on ${mains} Hz, a mains frequency or its double${mains > recording.sampleRate / 2 ? ', folded' : ''}.`,
        ),
        'It is no multiple of shaft speed.',
      ],
      nextCheck: `Record once more with the drive still and everything else as it was. If the line is there too, it comes from the mains or a machine nearby and not from the shaft line; if it is gone, run at another speed: a line that stays put is a resonance. ${SPIN_GUARDED}`,
    },
    orders: [],
    frequencies: lines.map(({ peak }) => peak.frequency),
  };
}

function fromPoles(evidence: Evidence): RuleFinding | undefined {
  const poles = evidence.line?.motor?.poles;
  if (poles === undefined) return undefined;
  const blades = evidence.line?.propeller?.blades ?? 0;
  const ordinary = [1, 2, blades, 2 * blades];
  const orders = [poles / 2, poles, 3 * poles]
    .filter((order) => !ordinary.includes(order))
    .flatMap((order) => orderEvidence(evidence, order) ?? [])
    .filter((found) => found.clear && found.amplitude > 0.1 * evidence.strongest);
  if (orders.length === 0) return undefined;
  const names = orders.map(({ reading }) => reading.order);
  const trust = Math.min(...orders.map((found) => found.trust));
  return {
    finding: {
      cause: 'electrical',
      confidence: (0.35 + 0.2 * ramp(orders.length, 1, 2)) * trust,
      evidence: [
        ...orders.flatMap(({ sentences }) => sentences),
        `${orders.length === 1 ? 'Order' : 'Orders'} ${listText(names)} count the ${poles} poles of the motor.`,
      ],
      nextCheck: `Run the motor alone, uncoupled, at the same speed. If the line stays, it is the motor and its controller; if it goes, it belongs to the shaft line. ${SPIN_GUARDED}`,
    },
    orders: orders.map(({ reading }) => reading.order),
    frequencies: [],
  };
}

function fromSwitching({ strangers, strongest }: Evidence): RuleFinding | undefined {
  const [peak] = strangers.filter(
    ({ frequency, amplitude }) => frequency >= SWITCHING && amplitude > 0.15 * strongest,
  );
  if (peak === undefined) return undefined;
  return {
    finding: {
      cause: 'electrical',
      confidence: 0.3 + 0.2 * ramp(peak.amplitude / strongest, 0.15, 0.8),
      evidence: [
        `A line at ${numberText(peak.frequency, 4)} Hz with ${amplitudeText(peak.amplitude, peak.unit, 2)} on ${peak.channel} is no multiple of shaft speed and lies where motor controllers switch.`,
      ],
      nextCheck: `Record the motor alone at two throttle settings. A line that stays at ${numberText(peak.frequency)} Hz is the controller and does the shaft line no harm; one that moves belongs to the motor. ${SPIN_GUARDED}`,
    },
    orders: [],
    frequencies: [peak.frequency],
  };
}
