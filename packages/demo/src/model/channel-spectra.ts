import { amplitudeSpectrum } from '@sternline/core';
import type { Recording } from '@sternline/core';
import type { ChannelSpectrum } from './analysis-types.js';
import type { SpectrumResolution } from './spectrum-resolution.js';

/**
 * The amplitude spectrum of each channel, strongest channel first.
 *
 * @param recording - as read
 * @param resolution - how it is cut
 * @returns one spectrum a channel; none where gaps leave no whole segment
 */
export function channelSpectra(recording: Recording, resolution: SpectrumResolution): ChannelSpectrum[] {
  const { segmentLength, step, overlap } = resolution;
  const options = { segmentLength, overlap, gaps: recording.sampling.gaps };
  return recording.channels
    .flatMap(({ name, unit, samples }) => {
      const amplitude = attempt(() => amplitudeSpectrum(samples, recording.sampleRate, options).amplitude);
      return amplitude ? [{ channel: name, unit, step, amplitude }] : [];
    })
    .sort((a, b) => highest(b.amplitude) - highest(a.amplitude));
}

/** A recording too torn for a spectrum still has its outline and its notes. */
function attempt<Result>(work: () => Result): Result | undefined {
  try {
    return work();
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

/** The first two lines hold what is left of the mean. */
function highest(amplitude: Float64Array): number {
  return amplitude.subarray(2).reduce((most, value) => Math.max(most, value), 0);
}
