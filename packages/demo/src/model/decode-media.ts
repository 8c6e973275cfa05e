import type { NamedBytes } from './analysis-types.js';
import { audioRate } from './audio-rate.js';
import type { DecodedSound } from './decoded-sound.js';
import { letPageBreathe } from './let-page-breathe.js';

/** Hz, of the decoder where a file does not state its own rate. */
const USUAL_RATE = 48_000;
/** Samples that are copied before the page is let go on. */
const PIECE = 2 ** 20;

/**
 * Has the browser decode a sound or video file, at the rate that the file states where it states one.
 *
 * @param file - name and content; the content is handed to the decoder and gone afterwards
 * @returns its sound; undefined where the browser cannot decode it
 */
export async function decodeMedia(file: NamedBytes): Promise<DecodedSound | undefined> {
  const stated = audioRate(file.bytes);
  const rate = stated?.rate ?? USUAL_RATE;
  try {
    const context = new OfflineAudioContext(1, 1, rate);
    const sound = await context.decodeAudioData(file.bytes.buffer as ArrayBuffer);
    return {
      name: file.name.replace(/\.[^.]{1,5}$/, ''),
      sampleRate: sound.sampleRate,
      channels: await copyChannels(sound),
      rateFrom: stated ? 'header' : 'given',
      notes: [rateNote(sound.sampleRate, stated?.format), ...(stated?.lossless ? [] : [LOSSY])],
    };
  } catch {
    return undefined;
  }
}

/** Piece by piece: a long recording copied in one go would hold the page up. */
async function copyChannels(sound: AudioBuffer): Promise<Float32Array[]> {
  const channels = Array.from({ length: sound.numberOfChannels }, () => new Float32Array(sound.length));
  for (const [index, samples] of channels.entries()) {
    for (let start = 0; start < sound.length; start += PIECE) {
      sound.copyFromChannel(samples.subarray(start, start + PIECE), index, start);
      await letPageBreathe();
    }
  }
  return channels;
}

const LOSSY =
  'Compressed sound may have lost faint tones, and the phone may have evened out its level: compare it only with recordings made the same way.';

function rateNote(rate: number, format: string | undefined): string {
  return format
    ? `Decoded by this browser from ${format} at the file’s own ${rate} samples a second.`
    : `Decoded by this browser at ${rate} samples a second; the file’s own rate is not known, so tones near the upper end may be missing.`;
}
