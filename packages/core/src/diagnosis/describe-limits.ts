import { numberText } from '../internal/number-text.js';
import { describeReach } from '../orders/describe-reach.js';
import type { Evidence } from './evidence.js';

/** What the recording cannot show at this speed, in sentences. */
export function describeLimits({ recording, speed, line, measured }: Evidence): string[] {
  const { sampleRate, sampling, channels } = recording;
  const blades = line?.propeller?.blades;
  const orders = [...new Set([1, 2, ...(blades === undefined ? [] : [blades])])];
  const reach = describeReach({ sampleRate, speed, orders, resolution: Math.max(measured.resolution, 1e-6) });
  const missing = sampling.gaps.reduce((sum, { count }) => sum + count, 0);
  return [
    ...reach.filter((sentence) => !sentence.endsWith('where they are.')),
    `Lines closer than ${numberText(measured.resolution, 2)} Hz run into one.`,
    ...sampling.clipping.map(
      ({ channel, level }) =>
        `${channel} was cut off at ${numberText(level)}: its amplitudes are too small and some of its higher orders are made by the cutting.`,
    ),
    ...(missing > 0
      ? [`${numberText(missing / sampleRate, 2)} s of samples are missing; what spans them was left out.`]
      : []),
    ...(sampling.kind === 'sound' && channels.length > 0
      ? ['Sound has no scale here: compare it only with the same phone, place and gain.']
      : []),
    'One speed alone cannot tell a resonance from a strong source: a second recording at another speed can.',
  ];
}
