import { RecordingError } from './recording-error.js';
import {
  chunksFollow,
  findChunks,
  nameAt,
  nextChunk,
  UNKNOWN_SIZE,
  type Chunk,
  type Wave,
} from './wav-chunks.js';

/** What the header of a WAV file says, once it is held against the file's true length. */
export interface WavHeader {
  readonly encoding: 'integer' | 'float';
  readonly littleEndian: boolean;
  readonly channels: number;
  /** Hz */
  readonly sampleRate: number;
  /** Bytes of one sample of one channel. */
  readonly sampleBytes: number;
  /** Place of the first sample. */
  readonly dataStart: number;
  readonly frames: number;
  readonly notes: readonly string[];
}

interface Format {
  readonly tag: number;
  readonly channels: number;
  readonly sampleRate: number;
  readonly byteRate: number;
  readonly blockBytes: number;
  readonly bits: number;
}

const PCM = 1;
const FLOAT = 3;
const EXTENSIBLE = 0xfffe;
const JUNK_SEARCHED = 1 << 16;

/** Registered wave format tags, from memory of RFC 2361 (E. Fleischman, WAVE and AVI Codec Registries, 1998). */
const TAGS: ReadonlyMap<number, string> = new Map([
  [0x0002, 'Microsoft ADPCM'],
  [0x0006, 'A-law'],
  [0x0007, 'µ-law'],
  [0x0011, 'IMA ADPCM'],
  [0x0031, 'GSM 6.10'],
  [0x0050, 'MPEG'],
  [0x0055, 'MP3'],
  [0x0092, 'Dolby AC-3'],
  [0x00ff, 'AAC'],
  [0x0160, 'Windows Media Audio'],
  [0x0161, 'Windows Media Audio'],
  [0x0162, 'Windows Media Audio'],
  [0x1610, 'AAC'],
  [0x2000, 'Dolby AC-3'],
]);

const FOREIGN: readonly (readonly [number, string, string])[] = [
  [0, 'OggS', 'Ogg'],
  [0, 'fLaC', 'FLAC'],
  [0, 'ID3', 'MP3'],
  [0, '#!AMR', 'AMR'],
  [0, 'FORM', 'AIFF'],
  [0, 'caff', 'Core Audio'],
  [0, '\u001aE\u00df\u00a3', 'WebM or Matroska'],
  [4, 'ftyp', 'MP4, M4A or 3GP'],
];

/** Tail of the sub-format GUIDs whose first four bytes are a wave format tag: -0000-0010-8000-00aa00389b71. */
const GUID_TAIL = '00001000800000aa00389b71';
/** The same with its numbers written high byte first. */
const GUID_TAIL_SWAPPED = '00000010800000aa00389b71';

/**
 * Reads and mends the header of a WAV file.
 *
 * @param view - the whole file
 * @throws RecordingError where the file is no WAV, is compressed, or its header makes no sense
 */
export function readWavHeader(view: DataView): WavHeader {
  checkContainer(view);
  const wave = { view, littleEndian: nameAt(view, 0) !== 'RIFX' };
  const { format: place, data, after, wide } = findChunks(wave);
  const format = place ? readFormat(wave, place) : undefined;
  if (!format) {
    const end = place?.start ?? view.byteLength;
    throw fault(
      'bad-header',
      'the file has no format chunk before its end.',
      'Record or export it again.',
      end,
    );
  }
  if (!data) throw silent(view.byteLength);
  const encoding = encodingOf(format, place?.start ?? 0);
  const sampleBytes = bytesOf(format);
  const frameBytes = sampleBytes * format.channels;
  const notes: string[] = [];
  if (format.blockBytes !== frameBytes)
    notes.push(
      `The header states ${format.blockBytes} bytes a frame; ${frameBytes} were read, as channels and bits demand.`,
    );
  const bytes = dataBytes(wave, { data, after, wide }, notes);
  const frames = Math.floor(bytes / frameBytes);
  if (frames === 0) throw silent(data.start);
  if (bytes % frameBytes > 0) notes.push('The last frame is cut off and was left out.');
  const { channels, sampleRate } = format;
  const { littleEndian } = wave;
  return { encoding, littleEndian, channels, sampleRate, sampleBytes, dataStart: data.start, frames, notes };
}

/** Samples may stand in more bytes than their bits need, where frame length and byte rate both say so. */
function bytesOf({ bits, channels, blockBytes, byteRate, sampleRate }: Format): number {
  const least = Math.ceil(bits / 8);
  const stated = blockBytes / channels;
  const agreed = byteRate === blockBytes * sampleRate && (stated === 2 || stated === 3 || stated === 4);
  return agreed && stated > least ? stated : least;
}

function silent(offset: number): RecordingError {
  return fault('no-rows', 'the file has a header and no samples.', 'Record or export it again.', offset);
}

function fault(code: RecordingError['code'], found: string, remedy: string, offset: number): RecordingError {
  return new RecordingError('readWav', { code, found, remedy, offset });
}

function isContainer(view: DataView, start: number): boolean {
  const id = nameAt(view, start);
  return (
    (id === 'RIFF' || id === 'RF64' || id === 'BW64' || id === 'RIFX') && nameAt(view, start + 8) === 'WAVE'
  );
}

function checkContainer(view: DataView): void {
  if (view.byteLength === 0) throw fault('empty', 'the file is empty.', 'Record it again.', 0);
  if (isContainer(view, 0)) return;
  const foreign = FOREIGN.find(([start, mark]) => nameAt(view, start, mark.length) === mark)?.[2];
  if (foreign !== undefined) {
    throw fault(
      'compressed',
      `this is no WAV file but ${foreign}.`,
      'Convert it to WAV (PCM) with a sound editor, or let the recorder save WAV.',
      0,
    );
  }
  if (nameAt(view, 0) === 'RIFF')
    throw fault(
      'not-wav',
      `this is a RIFF file of kind "${printable(nameAt(view, 8))}", not a WAV file.`,
      'Export the sound as WAV (PCM).',
      8,
    );
  for (let i = 1; i < Math.min(JUNK_SEARCHED, view.byteLength - 12); i++) {
    if (view.getUint8(i) === 0x52 && isContainer(view, i)) {
      throw fault(
        'not-wav',
        `a WAV file begins here, after ${i} bytes that belong to something else.`,
        'Cut these bytes off, or export the recording again.',
        i,
      );
    }
  }
  throw fault(
    'not-wav',
    'the file does not begin as a WAV file does.',
    'Read text with readDelimited; convert other sound to WAV (PCM).',
    0,
  );
}

function printable(text: string): string {
  return text.replace(/[^\u0020-\u007e]/g, '?');
}

function readFormat({ view, littleEndian }: Wave, { start, size }: Chunk): Format | undefined {
  if (size < 14 || start + 16 > view.byteLength) return undefined;
  const tag = view.getUint16(start, littleEndian);
  const extended = tag === EXTENSIBLE && size >= 40 && start + 40 <= view.byteLength;
  const channels = view.getUint16(start + 2, littleEndian);
  const blockBytes = view.getUint16(start + 12, littleEndian);
  return {
    tag: extended ? subFormat({ view, littleEndian }, start + 24) : tag,
    channels,
    sampleRate: view.getUint32(start + 4, littleEndian),
    byteRate: view.getUint32(start + 8, littleEndian),
    blockBytes,
    // The oldest form of the chunk ends before the bits; the frame's length then tells them.
    bits: size < 16 ? (8 * blockBytes) / Math.max(channels, 1) : view.getUint16(start + 14, littleEndian),
  };
}

function subFormat({ view, littleEndian }: Wave, start: number): number {
  let tail = '';
  for (let i = start + 4; i < start + 16; i++) tail += view.getUint8(i).toString(16).padStart(2, '0');
  const tag = view.getUint32(start, littleEndian);
  return tag <= 0xffff && (tail === GUID_TAIL || tail === GUID_TAIL_SWAPPED) ? tag : EXTENSIBLE;
}

function encodingOf({ tag, bits, channels, sampleRate }: Format, offset: number): WavHeader['encoding'] {
  if (tag !== PCM && tag !== FLOAT) {
    const known = TAGS.get(tag) ?? `format 0x${tag.toString(16).padStart(4, '0')}`;
    throw fault(
      'compressed',
      `the sound is stored as ${known}, not as plain samples.`,
      'Save it as WAV (PCM), 16 or 24 bit, with a sound editor.',
      offset,
    );
  }
  if (channels === 0)
    throw fault('bad-header', 'the header states no channels.', 'Record or export it again.', offset + 2);
  if (sampleRate === 0)
    throw fault(
      'bad-header',
      'the header states a sampling rate of 0 Hz.',
      'Record or export it again.',
      offset + 4,
    );
  const allowed =
    tag === FLOAT ? bits === 32 || bits === 64 : bits >= 1 && bits <= 32 && Number.isInteger(bits);
  if (!allowed)
    throw fault(
      'unsupported',
      `the header states ${tag === FLOAT ? 'floats' : 'samples'} of ${bits} bits.`,
      'Save it as WAV (PCM), 16 or 24 bit.',
      offset + 14,
    );
  return tag === FLOAT ? 'float' : 'integer';
}

/** The bytes of sound that are there, whatever the header states. */
function dataBytes(
  wave: Wave,
  { data, after, wide }: { data: Chunk; after: number; wide: boolean },
  notes: string[],
): number {
  const { view } = wave;
  const there = view.byteLength - data.start;
  if (data.size > there) {
    const open = data.size >= UNKNOWN_SIZE - 64 && !wide;
    notes.push(
      open
        ? 'The header leaves the length open, as a recorder does that was stopped hard: everything to the end was read.'
        : `The header states ${data.size} bytes of sound and ${there} are there: the file is cut off, or its header is wrong.`,
    );
    return there;
  }
  if (data.size === 0 && there > 0 && !chunksFollow(wave, data.start)) {
    notes.push(
      'The header states no sound at all, as a recorder does that was stopped hard: everything to the end was read.',
    );
    return there;
  }
  const rest = view.byteLength - after;
  if (rest > 8 && !chunksFollow(wave, nextChunk(view, after))) {
    notes.push(`After the sound stand ${rest} bytes that belong to no chunk; they were left aside.`);
  }
  return data.size;
}
