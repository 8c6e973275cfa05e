import { numberText } from '../internal/number-text.js';
import { foldedFrequency } from '../orders/folded-frequency.js';
import type { ChannelPeak } from './types.js';
import { amplitudeText } from './amplitude-text.js';
import type { Evidence, RuleFinding } from './evidence.js';
import { mainsLine } from './mains-line.js';
import { ramp } from './ramp.js';
import { SPIN_GUARDED } from './safety.js';
import { SWITCHING } from './switching.js';

/** A frequency that is no multiple of shaft speed and no mains line: a part of the model that rings on its own. */
export function findStructural(evidence: Evidence): RuleFinding | undefined {
  const { strangers, strongest, measured, recording, speed } = evidence;
  const place = { sampleRate: recording.sampleRate, resolution: measured.resolution };
  const lines = strangers.filter(
    ({ frequency, amplitude }) =>
      frequency < SWITCHING && mainsLine(frequency, place) === undefined && amplitude > 0.15 * strongest,
  );
  const [peak] = lines;
  if (peak === undefined) return undefined;
  const shaft = speed / (2 * Math.PI);
  const folded = foldedOrder(peak, evidence);
  const confidence =
    (0.3 + 0.3 * ramp(peak.amplitude / strongest, 0.15, 0.8)) * (folded === undefined ? 1 : 0.6);
  return {
    finding: {
      cause: 'structural-resonance',
      confidence,
      evidence: [
        `A line at ${numberText(peak.frequency, 4)} Hz with ${amplitudeText(peak.amplitude, peak.unit)} on ${peak.channel} is ${numberText(peak.frequency / shaft, 3)} times shaft speed, which is no multiple of it.`,
        'One recording at one speed can only say that much; whether the line stays where it is when the speed changes needs a second one.',
        ...(folded === undefined
          ? []
          : [`Order ${folded}, folded by the sampling, would fall there too, so it may yet be the shaft's.`]),
      ],
      nextCheck: `Record once more at a speed 15 % lower. If the line stays at ${numberText(peak.frequency)} Hz, it is a resonance of hull, mount or tube: press on panels and brackets to find which; if it moves with the speed, it belongs to something that turns. ${SPIN_GUARDED}`,
    },
    orders: [],
    frequencies: lines.map(({ frequency }) => frequency),
  };
}

/** The lowest whole order above half the sampling rate that would show at the peak. */
function foldedOrder(
  { frequency }: ChannelPeak,
  { speed, recording, measured }: Evidence,
): number | undefined {
  const shaft = speed / (2 * Math.PI);
  for (let order = 1; order <= 12; order++) {
    const actual = order * shaft;
    if (actual <= recording.sampleRate / 2) continue;
    if (Math.abs(foldedFrequency(actual, recording.sampleRate) - frequency) < measured.resolution)
      return order;
  }
  return undefined;
}
