import { type WavHeader } from './wav-header.js';

/** Samples of every channel in full scale. */
export interface WavSamples {
  readonly channels: readonly Float64Array[];
  /** Floats that were no number, or beyond all sense; they are 0 in the channels. */
  readonly bad: number;
}

/** Full scale; a float beyond it a million times is damage. */
const BEYOND_ALL = 1e6;

/**
 * Decodes interleaved samples, channel by channel.
 *
 * @param view - the whole file
 * @param header - what stands where
 */
export function decodeSamples(view: DataView, header: WavHeader): WavSamples {
  const channels: Float64Array[] = [];
  let bad = 0;
  for (let channel = 0; channel < header.channels; channel++) {
    const samples = new Float64Array(header.frames);
    decodeChannel(samples, { view, header, channel });
    if (header.encoding === 'float') bad += clean(samples);
    channels.push(samples);
  }
  return { channels, bad };
}

interface Source {
  readonly view: DataView;
  readonly header: WavHeader;
  readonly channel: number;
}

function decodeChannel(samples: Float64Array, { view, header, channel }: Source): void {
  const { sampleBytes, channels, dataStart, frames, encoding, littleEndian: little } = header;
  const stride = sampleBytes * channels;
  let p = dataStart + channel * sampleBytes;
  if (encoding === 'float') {
    if (sampleBytes === 4)
      for (let i = 0; i < frames; i++, p += stride) samples[i] = view.getFloat32(p, little);
    else for (let i = 0; i < frames; i++, p += stride) samples[i] = view.getFloat64(p, little);
  } else if (sampleBytes === 1) {
    // Eight bits alone are without sign, silence at 128.
    for (let i = 0; i < frames; i++, p += stride) samples[i] = (view.getUint8(p) - 128) / 128;
  } else if (sampleBytes === 2) {
    for (let i = 0; i < frames; i++, p += stride) samples[i] = view.getInt16(p, little) / 32768;
  } else if (sampleBytes === 3) {
    for (let i = 0; i < frames; i++, p += stride) {
      const high = view.getInt8(little ? p + 2 : p);
      samples[i] = ((high << 16) | view.getUint16(little ? p : p + 1, little)) / 8388608;
    }
  } else for (let i = 0; i < frames; i++, p += stride) samples[i] = view.getInt32(p, little) / 2147483648;
}

function clean(samples: Float64Array): number {
  let bad = 0;
  for (let i = 0; i < samples.length; i++) {
    if (Math.abs(samples[i] ?? 0) < BEYOND_ALL) continue;
    samples[i] = 0;
    bad++;
  }
  return bad;
}
