import type { Channel, ChannelUnit, Gap, Recording } from '@sternline/core';
import { createRandom, type Random } from '../../packages/core/src/numerics/random.js';

/** A sine: amplitude (peak), frequency in Hz, phase in rad at t = 0. */
export interface Component {
  readonly amplitude: number;
  readonly frequency: number;
  readonly phase?: number;
}

export interface MadeChannel {
  readonly name?: string;
  readonly unit?: ChannelUnit;
  readonly components?: readonly Component[];
  readonly offset?: number;
  /** Standard deviation; default that of the recording. */
  readonly noise?: number;
}

export interface MadeRecording {
  readonly sampleRate: number;
  readonly seconds: number;
  readonly channels: readonly MadeChannel[];
  /** Standard deviation of the noise, in the channel's unit. */
  readonly noise: number;
  readonly seed: number;
  /** 'white', or 'red' with power falling as 1/f² above 1/50 of the rate. */
  readonly colour?: 'white' | 'red';
  /** Samples are rounded to this step. */
  readonly step?: number;
  readonly gaps?: readonly Gap[];
}

/** A recording of known sines in seeded Gaussian noise, as plain data. */
export function makeRecording(made: MadeRecording): Recording {
  const { sampleRate, seconds, noise, seed, colour = 'white', step = 0 } = made;
  const random = createRandom(seed);
  const length = Math.round(seconds * sampleRate);
  const channels = made.channels.map((channel, index): Channel => {
    const samples = noiseOf(length, random, colour);
    for (let n = 0; n < length; n++) {
      let x = (channel.offset ?? 0) + samples[n]! * (channel.noise ?? noise);
      for (const { amplitude, frequency, phase = 0 } of channel.components ?? []) {
        x += amplitude * Math.sin((2 * Math.PI * frequency * n) / sampleRate + phase);
      }
      samples[n] = step > 0 ? step * Math.round(x / step) : x;
    }
    return {
      name: channel.name ?? 'xyz'[index] ?? `channel ${index}`,
      unit: channel.unit ?? 'm/s²',
      samples,
    };
  });
  return {
    name: `seed ${seed}`,
    sampleRate,
    channels,
    sampling: {
      kind: channels[0]?.unit === 'full scale' ? 'sound' : 'motion',
      duration: seconds,
      rateFrom: 'given',
      jitter: 0,
      stampStep: 0,
      gaps: made.gaps ?? [],
      equalStamps: 0,
      unsortedRows: 0,
      badCells: { count: 0, lines: [] },
      clipping: [],
      columns: [],
      notes: [],
    },
  };
}

function noiseOf(length: number, random: Random, colour: 'white' | 'red'): Float64Array {
  const samples = Float64Array.from({ length }, () => random.normal());
  if (colour === 'white') return samples;
  const keep = Math.exp((-2 * Math.PI) / 50);
  let state = 0;
  return samples.map((x) => {
    state = keep * state + Math.sqrt(1 - keep * keep) * x;
    return state;
  });
}
