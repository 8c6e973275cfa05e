import { decodeText } from './decode-text.js';
import { RecordingError } from './recording-error.js';

/** A file in a zip, as the directory at the zip's end lists it. */
export interface ZipEntry {
  readonly name: string;
  /** 0 stored, 8 deflated. */
  readonly method: number;
  readonly encrypted: boolean;
  readonly checksum: number;
  readonly packedBytes: number;
  readonly bytes: number;
  /** Place of its local header. */
  readonly offset: number;
}

const LOCAL = 0x04034b50;
const CENTRAL = 0x02014b50;
const END = 0x06054b50;
/** Length of the end record, and the longest comment after it. */
const END_BYTES = 22;
const COMMENT_BYTES = 0xffff;
/** Stated where a field stands in the 64-bit extension instead. */
const WIDE = 0xffffffff;

/**
 * Lists the files of a zip.
 *
 * @param view - the whole zip
 * @throws RecordingError where it is no zip, is cut off, or its directory makes no sense
 * @see PKWARE, .ZIP File Format Specification (APPNOTE.TXT) 6.3.10, 2022, sections 4.3.7 to 4.4
 */
export function zipDirectory(view: DataView): ZipEntry[] {
  if (view.byteLength < 4 || !startsAsZip(view))
    throw fault(
      'not-zip',
      'the file does not begin as a zip does.',
      'Read text with readDelimited and sound with readWav.',
      0,
    );
  const end = endRecord(view);
  if (end === undefined)
    throw fault(
      'not-zip',
      'the zip has no directory at its end: it is cut off.',
      'Copy or send the file again.',
      view.byteLength,
    );
  const count = view.getUint16(end + 10, true);
  const entries: ZipEntry[] = [];
  let position = view.getUint32(end + 16, true);
  for (let i = 0; i < count; i++) {
    if (position + 46 > view.byteLength || view.getUint32(position, true) !== CENTRAL)
      throw fault(
        'not-zip',
        `the directory of the zip breaks off after ${i} of ${count} files.`,
        'Copy or send the file again.',
        Math.min(position, view.byteLength),
      );
    const { entry, next } = readEntry(view, position);
    entries.push(entry);
    position = next;
  }
  return entries;
}

/**
 * The packed bytes of an entry.
 *
 * @throws RecordingError where they are not all there
 */
export function packedBytes(view: DataView, { name, offset, packedBytes: length }: ZipEntry): Uint8Array {
  const head = offset + 30 <= view.byteLength && view.getUint32(offset, true) === LOCAL;
  const start = head
    ? offset + 30 + view.getUint16(offset + 26, true) + view.getUint16(offset + 28, true)
    : Infinity;
  if (start + length > view.byteLength)
    throw fault(
      'not-zip',
      `"${name}" is not whole in the zip.`,
      'Copy or send the file again.',
      Math.min(offset, view.byteLength),
    );
  return new Uint8Array(view.buffer, view.byteOffset + start, length);
}

function startsAsZip(view: DataView): boolean {
  const mark = view.getUint32(0, true);
  return mark === LOCAL || mark === END;
}

function endRecord(view: DataView): number | undefined {
  const last = view.byteLength - END_BYTES;
  for (let i = last; i >= Math.max(0, last - COMMENT_BYTES); i--)
    if (view.getUint32(i, true) === END) return i;
  return undefined;
}

function readEntry(view: DataView, start: number): { entry: ZipEntry; next: number } {
  const nameBytes = view.getUint16(start + 28, true);
  const extraBytes = view.getUint16(start + 30, true);
  const nameEnd = Math.min(start + 46 + nameBytes, view.byteLength);
  const name = new Uint8Array(view.buffer, view.byteOffset + start + 46, nameEnd - start - 46);
  const packed = view.getUint32(start + 20, true);
  const bytes = view.getUint32(start + 24, true);
  const offset = view.getUint32(start + 42, true);
  if (packed === WIDE || bytes === WIDE || offset === WIDE)
    throw fault(
      'too-large',
      'the zip states its sizes in 64 bits, as for files above 4 GB.',
      'Pack the recording alone.',
      start,
    );
  return {
    entry: {
      name: decodeText(name),
      method: view.getUint16(start + 10, true),
      encrypted: (view.getUint16(start + 8, true) & 1) === 1,
      checksum: view.getUint32(start + 16, true),
      packedBytes: packed,
      bytes,
      offset,
    },
    next: start + 46 + nameBytes + extraBytes + view.getUint16(start + 32, true),
  };
}

function fault(code: RecordingError['code'], found: string, remedy: string, offset: number): RecordingError {
  return new RecordingError('readZip', { code, found, remedy, offset });
}
