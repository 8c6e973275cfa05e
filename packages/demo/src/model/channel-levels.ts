import { integrateAcceleration, levels } from '@sternline/core';
import type { Channel, Recording } from '@sternline/core';
import type { ChannelLevels } from './analysis-types.js';

/** Hz, below which a phone's own drift drowns a velocity. */
const LOWEST = 10;
/** Share of the rate up to which a phone's filter leaves the amplitude alone; common practice. */
const USABLE = 0.4;

/**
 * Level, crest factor and kurtosis of each channel, and the velocity where it is an acceleration sampled fast enough.
 *
 * @param recording - as read, or a part of it
 * @returns one entry a channel, the strongest first
 */
export function channelLevels(recording: Recording): ChannelLevels[] {
  return recording.channels
    .map((channel) => {
      const { rms, peak, crestFactor, kurtosis } = levels(channel.samples);
      const { name, unit } = channel;
      return {
        ...{ channel: name, unit, rms, peak, crestFactor, kurtosis },
        ...velocityOf(channel, recording.sampleRate),
      };
    })
    .sort((a, b) => b.rms - a.rms);
}

function velocityOf({ unit, samples }: Channel, sampleRate: number): Pick<ChannelLevels, 'velocity'> {
  const band = { from: LOWEST, to: USABLE * sampleRate };
  // Ten periods of the lowest frequency at least, and a band worth the name.
  if (unit !== 'm/s²' || band.to < 2 * LOWEST || samples.length < (10 * sampleRate) / LOWEST) return {};
  return { velocity: { rms: levels(integrateAcceleration(samples, sampleRate, { band })).rms, band } };
}
