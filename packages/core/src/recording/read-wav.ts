import { refusal } from '../internal/refuse.js';
import { findClipping } from './find-clipping.js';
import { findLevelPumping } from './find-level-pumping.js';
import { findStuck } from './find-stuck.js';
import { levelPumpingNote } from './level-pumping-note.js';
import { scanSamples } from './scan-samples.js';
import { type Channel, type ReadWavOptions, type Recording, type Sampling } from './types.js';
import { decodeSamples } from './wav-samples.js';
import { readWavHeader, type WavHeader } from './wav-header.js';

/**
 * Reads a WAV file: PCM of 8 to 32 bits, floats of 32 and 64, any number of channels, extensible and RF64 headers,
 * either byte order.
 *
 * @param bytes - the whole file
 * @param options - the recording's name
 * @returns sound in full scale, −1 to 1, at the file's own rate in Hz; `sampling.notes` says where the header lied
 * @throws RangeError where `bytes` is neither a Uint8Array nor an ArrayBuffer
 * @throws RecordingError where the file is no WAV, is compressed, or holds no samples
 * @remarks Levels are relative: a microphone's full scale is no pressure. A header that states a wrong length is
 *   mended by the file's true length, with a note.
 * @example
 * const bytes = Uint8Array.of(
 *   82, 73, 70, 70, 42, 0, 0, 0, 87, 65, 86, 69, // RIFF … WAVE
 *   102, 109, 116, 32, 16, 0, 0, 0, 1, 0, 1, 0, 64, 31, 0, 0, 128, 62, 0, 0, 2, 0, 16, 0, // fmt: PCM, mono, 8000 Hz, 16 bit
 *   100, 97, 116, 97, 6, 0, 0, 0, 0, 0, 0, 64, 0, 192, // data: 0, 16384, −16384
 * );
 * const recording = readWav(bytes);
 * recording.sampleRate // → 8000
 * recording.channels[0].samples // → [0, 0.5, -0.5]
 * readWav(new Uint8Array(20)) // → throws does not begin as a WAV file does
 * @see IBM and Microsoft, Multimedia Programming Interface and Data Specifications 1.0, 1991 (RIFF WAVE)
 * @see EBU Tech 3306, MBWF / RF64: An extended File Format for Audio, 2009
 */
export function readWav(bytes: Uint8Array | ArrayBuffer, options: ReadWavOptions = {}): Recording {
  const view = viewOf(bytes);
  const header = readWavHeader(view);
  const { channels: samples, bad } = decodeSamples(view, header);
  const channels = samples.map((values, i): Channel => ({
    name: channelName(header.channels, i),
    unit: 'full scale',
    samples: values,
  }));
  return {
    name: options.name ?? 'recording',
    sampleRate: header.sampleRate,
    channels,
    sampling: describe(header, channels, bad),
  };
}

function viewOf(bytes: Uint8Array | ArrayBuffer): DataView {
  if (bytes instanceof Uint8Array) return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes instanceof ArrayBuffer) return new DataView(bytes);
  throw refusal('readWav: bytes', 'a Uint8Array or an ArrayBuffer', bytes);
}

function channelName(channels: number, i: number): string {
  if (channels === 1) return 'sound';
  return channels === 2 ? (i === 0 ? 'left' : 'right') : `channel ${i + 1}`;
}

function describe(header: WavHeader, channels: readonly Channel[], bad: number): Sampling {
  const { sampleRate, frames, encoding, sampleBytes } = header;
  const step = encoding === 'integer' ? 2 ** (1 - 8 * sampleBytes) : 0;
  const scans = channels.map(({ samples }) => scanSamples(samples));
  const clipping = findClipping(channels, { scans, limits: [1] });
  const stuck = findStuck(channels, { scans, shortest: Math.max(20, Math.round(0.1 * sampleRate)) });
  const levelPumping = findLevelPumping(channels, sampleRate);
  return {
    kind: 'sound',
    duration: frames / sampleRate,
    rateFrom: 'header',
    jitter: 0,
    stampStep: 0,
    gaps: [],
    equalStamps: 0,
    unsortedRows: 0,
    badCells: { count: bad, lines: [] },
    clipping,
    columns: [],
    notes: [...header.notes, ...notesOn({ clipping, stuck, bad }), ...levelPumpingNote(levelPumping)],
    timeBase: 'counts',
    passband: sampleRate / 2,
    stuck,
    resolution: channels.map(({ name }) => ({ channel: name, step })),
    ...(levelPumping ? { levelPumping } : {}),
  };
}

function notesOn({
  clipping,
  stuck = [],
  bad,
}: Pick<Sampling, 'clipping' | 'stuck'> & { bad: number }): string[] {
  const clipped = [...new Set(clipping.map(({ channel }) => channel))];
  const still = [...new Set(stuck.map(({ channel }) => channel))];
  return [
    ...(clipped.length > 0
      ? [`Overdriven on ${clipped.join(', ')}: peaks are cut off, and high orders appear that are not there.`]
      : []),
    ...(still.length > 0
      ? [
          `Dead silence for a while on ${still.join(', ')}: a gate or noise suppression was at work, or the sound broke off.`,
        ]
      : []),
    ...(bad > 0 ? [`${bad} samples were no number and were set to 0.`] : []),
  ];
}
