import { Inflate } from 'fflate';
import { numberText } from '../internal/number-text.js';
import { RecordingError } from './recording-error.js';
import { packedBytes, type ZipEntry } from './zip-directory.js';

/** Packed bytes given to the unpacker at a time: they make a thousand times as many at most. */
const PORTION = 1 << 12;

/** The largest part of the file, in MiB, for a sentence. */
function mebibytes(bytes: number): string {
  return numberText(bytes / 2 ** 20);
}

/**
 * Unpacks one file of a zip, and no more bytes than are allowed, whatever the zip states.
 *
 * @param view - the whole zip
 * @param wanted - the entry and the bytes that it may have
 * @throws RecordingError where it is encrypted, packed in an unknown way, too large or damaged
 */
export function unpackEntry(view: DataView, { entry, most }: { entry: ZipEntry; most: number }): Uint8Array {
  const { name, method, encrypted, bytes, checksum, offset } = entry;
  const fault = (code: RecordingError['code'], found: string, remedy: string): RecordingError =>
    new RecordingError('readZip', { code, found, remedy, offset });
  const tooLarge = (): RecordingError =>
    fault(
      'too-large',
      `"${name}" unpacks to more than ${mebibytes(most)} MiB.`,
      'Unpack it yourself and give the file, or raise options.mostBytes if you trust it.',
    );
  if (encrypted)
    throw fault(
      'encrypted',
      `"${name}" is locked with a password.`,
      'Unpack it yourself and give the file, or export without a password.',
    );
  if (method !== 0 && method !== 8)
    throw fault(
      'unsupported',
      `"${name}" is packed by method ${method}, which is rarely used.`,
      'Unpack it yourself and give the file.',
    );
  if (bytes > most) throw tooLarge();
  const packed = packedBytes(view, entry);
  const unpacked = method === 0 ? packed : inflate(packed, Math.min(bytes, most));
  if (unpacked === 'too long' && bytes >= most) throw tooLarge();
  if (typeof unpacked === 'string' || unpacked.length !== bytes || crc32(unpacked) !== checksum)
    throw fault('not-zip', `"${name}" is damaged in the zip.`, 'Copy or send the file again.');
  return unpacked;
}

/** The unpacked bytes; a word where they are damaged or more than stated. */
function inflate(packed: Uint8Array, length: number): Uint8Array | 'damaged' | 'too long' {
  const result = new Uint8Array(length);
  const state = { filled: 0 };
  const stream = new Inflate((piece) => {
    if (state.filled + piece.length <= length) result.set(piece, state.filled);
    state.filled += piece.length;
  });
  try {
    for (let i = 0; i < packed.length && state.filled <= length; i += PORTION)
      stream.push(packed.subarray(i, i + PORTION), i + PORTION >= packed.length);
  } catch {
    return 'damaged';
  }
  return state.filled > length ? 'too long' : result.subarray(0, state.filled);
}

const CRC = Uint32Array.from({ length: 256 }, (_, i) => {
  let value = i;
  for (let k = 0; k < 8; k++) value = value & 1 ? 0xedb88320 ^ (value >>> 1) : value >>> 1;
  return value;
});

/** ITU-T V.42, 8.1.1.6.2: the 32-bit frame check sequence, low bit first. */
function crc32(bytes: Uint8Array): number {
  let value = 0xffffffff;
  for (const byte of bytes) value = (CRC[(value ^ byte) & 255] ?? 0) ^ (value >>> 8);
  return (value ^ 0xffffffff) >>> 0;
}
