import type { Recording } from '../recording/types.js';
import { reduceSamples } from './reduce-samples.js';

/** A recording reduced as {@link reduceSamples} does, with its gaps. */
export function reduceRate(recording: Recording, highest: number): Recording {
  const reduced = recording.channels.map(({ samples }) =>
    reduceSamples(samples, recording.sampleRate, highest),
  );
  const { factor = 1, sampleRate = recording.sampleRate } = reduced[0] ?? {};
  if (factor === 1) return recording;
  return {
    ...recording,
    sampleRate,
    channels: recording.channels.map((channel, i) => ({
      ...channel,
      samples: Float64Array.from(reduced[i]?.samples ?? []),
    })),
    sampling: {
      ...recording.sampling,
      gaps: recording.sampling.gaps.map(({ start, count }) => ({
        start: Math.floor(start / factor),
        count: Math.ceil(count / factor) + 1,
      })),
    },
  };
}
