import { refusal } from '../internal/refuse.js';
import { looksLikeText } from './looks-like-text.js';
import { type FileFacts } from './types.js';

/** Bytes looked at. */
const HEAD = 4096;

const SOUND =
  'Any browser plays it, so the page can take its sound; elsewhere convert it to WAV (PCM) with a sound editor.';
const AMR =
  'No browser plays the sound of old phone recorders (AMR): convert it to WAV with a sound editor, or set the recorder to WAV, M4A or “high quality”.';
const PACKED = 'Unpack it and give the recording that is in it.';
const PICTURE = 'A picture holds no samples: export the recording itself, as CSV or WAV.';
const TABLE = 'Export the recording from there as CSV.';

interface Mark {
  readonly at: number;
  /** Latin-1 letters. */
  readonly bytes: string;
  readonly format: string;
  readonly reader: FileFacts['reader'];
  readonly advice: string;
}

function mark(
  bytes: string,
  format: string,
  advice: string,
  reader: FileFacts['reader'] = 'none',
  at = 0,
): Mark {
  return { at, bytes, format, reader, advice };
}

const READ = 'It can be read as it is.';

/** First bytes, in the order in which they are tried. Sources: each format's own specification, as file(1) collects them; from memory. */
const MARKS: readonly Mark[] = [
  mark('RIFX', 'a WAV file', READ, 'readWav'),
  mark('RF64', 'a WAV file', READ, 'readWav'),
  mark('BW64', 'a WAV file', READ, 'readWav'),
  mark('WAVE', 'a WAV file', READ, 'readWav', 8),
  mark('AVI ', 'an AVI video', 'Take the sound out of it as WAV (PCM) with a sound editor.', 'none', 8),
  mark('WEBP', 'a WebP picture', PICTURE, 'none', 8),
  mark('PK\x03\x04', 'a zip archive', READ, 'readZip'),
  mark('PK\x05\x06', 'a zip archive', READ, 'readZip'),
  mark('#!AMR', 'an AMR sound file', AMR),
  mark('ftyp3g', 'a 3GP recording', `Its sound is often AMR. ${AMR}`, 'media', 4),
  mark('ftypM4A', 'an M4A sound file', SOUND, 'media', 4),
  mark('ftypqt', 'a QuickTime video', SOUND, 'media', 4),
  mark('ftyphei', 'a HEIF picture', PICTURE, 'none', 4),
  mark('ftypmif1', 'a HEIF picture', PICTURE, 'none', 4),
  mark('ftypavif', 'an AVIF picture', PICTURE, 'none', 4),
  mark('ftyp', 'an MP4 recording', SOUND, 'media', 4),
  mark('moov', 'a QuickTime video', SOUND, 'media', 4),
  mark('ID3', 'an MP3 sound file', SOUND, 'media'),
  mark('OggS', 'an Ogg sound file', SOUND, 'media'),
  mark('fLaC', 'a FLAC sound file', SOUND, 'media'),
  mark('\x1aE\xdf\xa3', 'a WebM or Matroska recording', SOUND, 'media'),
  mark('FORM', 'an AIFF sound file', SOUND, 'media'),
  mark('caff', 'a Core Audio sound file', SOUND, 'media'),
  mark('ADIF', 'an AAC sound file', SOUND, 'media'),
  mark('MThd', 'a MIDI file', 'It holds notes and no sound.'),
  mark(
    '\x30\x26\xb2\x75\x8e\x66\xcf\x11',
    'a Windows Media file',
    'Convert it to WAV (PCM) with a sound editor.',
  ),
  mark('%PDF-', 'a PDF document', TABLE),
  mark('\xff\xd8\xff', 'a JPEG picture', PICTURE),
  mark('\x89PNG', 'a PNG picture', PICTURE),
  mark('GIF8', 'a GIF picture', PICTURE),
  mark('\x1f\x8b', 'a gzip archive', PACKED),
  mark('7z\xbc\xaf\x27\x1c', 'a 7z archive', PACKED),
  mark('Rar!', 'a RAR archive', PACKED),
  mark('BZh', 'a bzip2 archive', PACKED),
  mark('\xfd7zXZ', 'an xz archive', PACKED),
  mark('\xd0\xcf\x11\xe0', 'an old office document', 'Save the sheet as CSV.'),
  mark('SQLite format 3', 'a database', TABLE),
  mark('MATLAB 5', 'a MATLAB file', TABLE),
  mark('\x89HDF', 'an HDF5 file', TABLE),
  mark('PAR1', 'a Parquet table', TABLE),
];

/**
 * Says what a file is by its first bytes, which function reads it, and what to do where none does.
 *
 * @param bytes - the file or its first 4096 bytes
 * @returns the kind of file, its reader, and a sentence for the person who gave it
 * @throws RangeError where `bytes` is not a Uint8Array
 * @remarks The name of the file is not looked at. An empty file counts as text, and `readDelimited` then says so. For
 *   `media` the page hands the file to the browser; whether that plays it depends on the browser.
 * @example
 * const amr = sniffFile(Uint8Array.from('#!AMR\n<', (letter) => letter.charCodeAt(0)));
 * amr.reader // → 'none'
 * amr.format // → 'an AMR sound file'
 * sniffFile(Uint8Array.from('t;x\n0;1\n', (letter) => letter.charCodeAt(0))).reader // → 'readDelimited'
 */
export function sniffFile(bytes: Uint8Array): FileFacts {
  if (!(bytes instanceof Uint8Array)) throw refusal('sniffFile: bytes', 'a Uint8Array', bytes);
  const head = bytes.subarray(0, HEAD);
  const found = MARKS.find(({ at, bytes: expected }) => standsAt(head, { at, expected }));
  // A text may begin with the letters of a mark; samples never read as text.
  if (found && !(found.bytes.length < 5 && found.at === 0 && isWordy(found.bytes) && looksLikeText(head)))
    return { format: found.format, reader: found.reader, advice: found.advice };
  const frame = audioFrame(head);
  if (frame !== undefined) return { format: frame, reader: 'media', advice: SOUND };
  if (looksLikeText(head)) return textFacts(head);
  return {
    format: 'a file of no known kind',
    reader: 'none',
    advice: 'Export the recording as CSV, or the sound as WAV (PCM).',
  };
}

function standsAt(head: Uint8Array, { at, expected }: { at: number; expected: string }): boolean {
  for (let i = 0; i < expected.length; i++) if (head[at + i] !== expected.charCodeAt(i)) return false;
  return true;
}

function isWordy(text: string): boolean {
  return /^[\x20-\x7e]+$/.test(text);
}

/** A frame of MPEG sound begins with eleven set bits; layer and rate must not be the reserved ones. */
function audioFrame([first = 0, second = 0, third = 0]: Uint8Array): string | undefined {
  // FF FE is the byte order mark of a text.
  if (first !== 0xff || (second & 0xe0) !== 0xe0 || second === 0xfe) return undefined;
  if ((second & 0xf6) === 0xf0) return 'an AAC sound file';
  const reserved =
    (second & 0x18) === 0x08 || (second & 0x06) === 0 || third >> 4 === 15 || (third & 0x0c) === 0x0c;
  return reserved ? undefined : 'an MP3 sound file';
}

function textFacts(head: Uint8Array): FileFacts {
  const start = String.fromCharCode(...head.subarray(0, 256)).replace(/^\u00ef\u00bb\u00bf/, '');
  return /^\s*<(!doctype|html|\?xml|svg|gpx|kml)/i.test(start)
    ? { format: 'a page or XML document', reader: 'none', advice: TABLE }
    : { format: 'a text file', reader: 'readDelimited', advice: READ };
}
