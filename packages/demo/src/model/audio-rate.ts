/** The sampling rate that a sound file states, and the format it was read from. */
export interface StatedRate {
  /** Hz */
  readonly rate: number;
  readonly format: string;
  /** Whether every sample was kept. */
  readonly lossless?: true;
}

/**
 * Looks up the sampling rate in the head of a compressed sound or video file.
 *
 * `decodeAudioData` resamples to the rate of its context, which would move and invent peaks; with the file's own rate it
 * does not.
 *
 * @param bytes - the whole file, or at least its head
 * @returns the rate, or undefined where the format is not one of FLAC, Ogg, MPEG-4, WebM, ADTS or MPEG audio
 */
export function audioRate(bytes: Uint8Array): StatedRate | undefined {
  const known = READERS.map((read) => read(bytes)).find((found) => found !== undefined);
  return known && known.rate >= 1000 && known.rate <= 768_000 ? known : undefined;
}

type Reader = (bytes: Uint8Array) => StatedRate | undefined;

const READERS: readonly Reader[] = [readFlac, readOgg, readMpeg4, readWebm, readAdts, readMpegAudio];

/** A search for a mark that stands near the head; files may be long. */
const HEAD = 65_536;

function readFlac(bytes: Uint8Array): StatedRate | undefined {
  if (textAt(bytes, 0, 4) !== 'fLaC') return undefined;
  return {
    rate: byte(bytes, 18) * 4096 + byte(bytes, 19) * 16 + (byte(bytes, 20) >> 4),
    format: 'FLAC',
    lossless: true,
  };
}

function readOgg(bytes: Uint8Array): StatedRate | undefined {
  if (textAt(bytes, 0, 4) !== 'OggS') return undefined;
  if (find(bytes, 'OpusHead') >= 0) return { rate: 48_000, format: 'Ogg Opus' };
  const vorbis = find(bytes, '\u0001vorbis');
  return vorbis < 0 ? undefined : { rate: view(bytes).getUint32(vorbis + 12, true), format: 'Ogg Vorbis' };
}

// In MPEG-4 the box of the sound track holds the rate as 16.16 fixed point, 28 bytes after its name.
function readMpeg4(bytes: Uint8Array): StatedRate | undefined {
  if (textAt(bytes, 4, 4) !== 'ftyp') return undefined;
  const box = find(bytes, 'mp4a', bytes.length);
  if (box < 0 || box + 32 > bytes.length) return undefined;
  return { rate: view(bytes).getUint16(box + 28), format: 'MPEG-4' };
}

// In WebM the element 0xB5 holds the sampling frequency as a float of 4 or 8 bytes.
function readWebm(bytes: Uint8Array): StatedRate | undefined {
  if (view(bytes).byteLength < 4 || view(bytes).getUint32(0) !== 0x1a45dfa3) return undefined;
  if (find(bytes, 'A_OPUS') >= 0) return { rate: 48_000, format: 'WebM Opus' };
  const plain = find(bytes, 'A_PCM/');
  const track = plain >= 0 ? plain : find(bytes, 'A_VORBIS');
  if (track < 0) return undefined;
  const kind = plain >= 0 ? ({ format: 'WebM PCM', lossless: true } as const) : { format: 'WebM' };
  for (let at = track; at < Math.min(bytes.length - 9, track + 512); at++) {
    if (byte(bytes, at) !== 0xb5) continue;
    if (byte(bytes, at + 1) === 0x84) return { rate: view(bytes).getFloat32(at + 2), ...kind };
    if (byte(bytes, at + 1) === 0x88) return { rate: view(bytes).getFloat64(at + 2), ...kind };
  }
  return undefined;
}

const ADTS_RATES = [96, 88.2, 64, 48, 44.1, 32, 24, 22.05, 16, 12, 11.025, 8, 7.35];

function readAdts(bytes: Uint8Array): StatedRate | undefined {
  if (byte(bytes, 0) !== 0xff || (byte(bytes, 1) & 0xf6) !== 0xf0) return undefined;
  const rate = ADTS_RATES[(byte(bytes, 2) >> 2) & 15];
  return rate === undefined ? undefined : { rate: Math.round(rate * 1000), format: 'AAC' };
}

function readMpegAudio(bytes: Uint8Array): StatedRate | undefined {
  const start = textAt(bytes, 0, 3) === 'ID3' ? 10 + tagLength(bytes) : 0;
  if (byte(bytes, start) !== 0xff || (byte(bytes, start + 1) & 0xe6) < 0xe2) return undefined;
  const base = [44_100, 48_000, 32_000][(byte(bytes, start + 2) >> 2) & 3];
  const version = (byte(bytes, start + 1) >> 3) & 3;
  if (base === undefined || version === 1) return undefined;
  return { rate: base / ({ 3: 1, 2: 2, 0: 4 }[version] ?? 1), format: 'MPEG audio' };
}

function tagLength(bytes: Uint8Array): number {
  return [6, 7, 8, 9].reduce((sum, at) => sum * 128 + (byte(bytes, at) & 127), 0);
}

function byte(bytes: Uint8Array, at: number): number {
  return bytes[at] ?? 0;
}

function textAt(bytes: Uint8Array, from: number, length: number): string {
  return String.fromCharCode(...bytes.subarray(from, from + length));
}

function view(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}

function find(bytes: Uint8Array, mark: string, within = HEAD): number {
  const codes = Array.from(mark, (letter) => letter.charCodeAt(0));
  const last = Math.min(bytes.length, within) - codes.length;
  for (
    let at = bytes.indexOf(codes[0] ?? 0);
    at >= 0 && at <= last;
    at = bytes.indexOf(codes[0] ?? 0, at + 1)
  ) {
    if (codes.every((code, index) => bytes[at + index] === code)) return at;
  }
  return -1;
}
