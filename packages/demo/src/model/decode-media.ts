import type { Recording } from '@sternline/core';
import type { NamedBytes, ReadOutcome } from './analysis-types.js';
import { audioRate } from './audio-rate.js';

/** Hz, of the decoder where a file does not state its own rate. */
const USUAL_RATE = 48_000;

/**
 * Has the browser decode a sound or video file, at the rate that the file states where it states one.
 *
 * @param file - name and content; the content is handed to the decoder and gone afterwards
 * @returns a recording of sound, or why the browser could not decode it
 */
export async function decodeMedia(file: NamedBytes): Promise<ReadOutcome> {
  const stated = audioRate(file.bytes);
  const rate = stated?.rate ?? USUAL_RATE;
  try {
    const context = new OfflineAudioContext(1, 1, rate);
    const sound = await context.decodeAudioData(file.bytes.buffer as ArrayBuffer);
    return { kind: 'read', recording: soundRecording(sound, { name: file.name, format: stated?.format }) };
  } catch {
    return {
      kind: 'stopped',
      code: 'not-decoded',
      found: `${file.name} is neither text nor WAV, and this browser cannot decode it as sound or video.`,
      remedy: 'Save it as WAV on the phone or with any sound editor, and choose that file.',
    };
  }
}

/** What is used of an AudioBuffer. */
type Sound = Pick<AudioBuffer, 'sampleRate' | 'numberOfChannels' | 'duration' | 'getChannelData'>;

function soundRecording(
  sound: Sound,
  from: { readonly name: string; readonly format: string | undefined },
): Recording {
  const { sampleRate, numberOfChannels, duration } = sound;
  const names = numberOfChannels === 1 ? ['sound'] : numberOfChannels === 2 ? ['left', 'right'] : [];
  return {
    name: from.name.replace(/\.[^.]{1,5}$/, ''),
    sampleRate,
    channels: Array.from({ length: numberOfChannels }, (_, index) => ({
      name: names[index] ?? `channel ${index + 1}`,
      unit: 'full scale',
      samples: Float64Array.from(sound.getChannelData(index)),
    })),
    sampling: {
      kind: 'sound',
      duration,
      rateFrom: from.format ? 'header' : 'given',
      jitter: 0,
      stampStep: 0,
      gaps: [],
      equalStamps: 0,
      unsortedRows: 0,
      badCells: { count: 0, lines: [] },
      clipping: [],
      columns: [],
      notes: [rateNote(sampleRate, from.format), LOSSY],
    },
  };
}

const LOSSY =
  'Compressed sound may have lost faint tones, and the phone may have evened out its level: compare it only with recordings made the same way.';

function rateNote(rate: number, format: string | undefined): string {
  return format
    ? `Decoded by this browser from ${format} at the file’s own ${rate} samples a second.`
    : `Decoded by this browser at ${rate} samples a second; the file’s own rate is not known, so tones near the upper end may be missing.`;
}
