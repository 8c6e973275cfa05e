import { numberText } from '../internal/number-text.js';
import { foldedFrequency } from '../orders/folded-frequency.js';
import { amplitudeText } from './amplitude-text.js';
import type { Candidate, Evidence } from './evidence.js';
import { mainsLine } from './mains-line.js';
import { SPIN_GUARDED } from './safety.js';
import { shareOf } from './share-of.js';
import { SWITCHING } from './switching.js';
import type { ChannelPeak } from './types.js';

/** A frequency that is no multiple of shaft speed and no mains line: a part of the model that rings on its own. */
export function findStructural(evidence: Evidence): Candidate | undefined {
  const { strangers, measured, recording, speed } = evidence;
  const place = { sampleRate: recording.sampleRate, resolution: measured.resolution };
  const [peak] = strangers.filter(
    ({ frequency, amplitude, unit }) =>
      frequency < SWITCHING &&
      mainsLine(frequency, place) === undefined &&
      shareOf(evidence, amplitude, unit) > 0.15,
  );
  if (peak === undefined) return undefined;
  const shaft = speed / (2 * Math.PI);
  const folded = foldedOrder(peak, evidence);
  return {
    cause: 'structural-resonance',
    evidence: [
      `A line at ${numberText(peak.frequency, 4)} Hz with ${amplitudeText(peak.amplitude, peak.unit)} on ${peak.channel} is ${numberText(peak.frequency / shaft, 3)} times shaft speed, which is no multiple of it.`,
      'One recording at one speed can only say that much; whether the line stays where it is when the speed changes needs a second one.',
      ...(folded === undefined
        ? []
        : [`Order ${folded}, folded by the sampling, would fall there too, so it may yet be the shaft's.`]),
    ],
    check: 'Record once more at a speed 15 % lower.',
    outcomes: [
      {
        result: `the line stays at ${numberText(peak.frequency)} Hz`,
        means:
          'it is a resonance of hull, mount or tube: with the drive stopped, weight panels and brackets in turn and record again to find which',
      },
      { result: 'it moves with the speed', means: 'it belongs to something that turns' },
    ],
    rivals: [
      {
        cause: 'electrical',
        why: 'It lies on no mains frequency, and below where motor controllers switch.',
      },
      {
        cause: 'unexplained',
        why: 'A gear, a belt or a second machine can turn at a speed of its own and shake there.',
      },
    ],
    caution: SPIN_GUARDED,
    orders: [],
    adjustment: folded === undefined ? 0 : -1,
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
