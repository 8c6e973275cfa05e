import { checkPositive } from '../internal/checks.js';
import { listText } from '../internal/list-text.js';
import { refusal } from '../internal/refuse.js';
import { decodeText } from './decode-text.js';
import { rankEntries, type RankedEntry } from './rank-entries.js';
import { readText } from './read-text.js';
import { readWav } from './read-wav.js';
import { RecordingError } from './recording-error.js';
import { sniffFile } from './sniff-file.js';
import { type ReadZipOptions, type Recording } from './types.js';
import { unpackEntry } from './unpack-entry.js';
import { zipDirectory, type ZipEntry } from './zip-directory.js';

const MOST_BYTES = 2 ** 28;
/** Files that are tried where names do not tell. */
const MOST_TRIED = 12;

/**
 * Reads the recording in a zip, as loggers send it: one file for each sensor, of which the accelerometer's is read.
 *
 * @param bytes - the whole zip
 * @param options - the file to read, what is known about it, and the bytes that may be unpacked
 * @returns the recording; `sampling.entries` lists the files that hold one, the one that was read first
 * @throws RangeError where an argument is out of its domain
 * @throws RecordingError where the zip is damaged, locked, too large once unpacked, another kind of file, or holds no recording
 * @remarks Files are ranked by their names and the first that reads as an acceleration is taken; where there is text of no
 *   sensor, a WAV file is read. At most 256 MiB are unpacked in all (`options.mostBytes`), whatever the zip states.
 * @example
 * const zipped = Uint8Array.of(80, 75, 5, 6, ...Array.from({ length: 18 }, () => 0)); // a zip without files
 * readZip(zipped) // → throws there is no file in the zip
 * readZip(new Uint8Array(40)) // → throws does not begin as a zip does
 */
export function readZip(bytes: Uint8Array | ArrayBuffer, options: ReadZipOptions = {}): Recording {
  if (!(bytes instanceof Uint8Array || bytes instanceof ArrayBuffer))
    throw refusal('readZip: bytes', 'a Uint8Array or an ArrayBuffer', bytes);
  const { mostBytes = MOST_BYTES } = options;
  checkPositive('readZip: mostBytes', mostBytes);
  const array = bytes instanceof Uint8Array ? bytes : new Uint8Array(bytes);
  const view = new DataView(array.buffer, array.byteOffset, array.byteLength);
  const entries = zipDirectory(view);
  refuseOther(entries);
  const ranked = rankEntries(entries);
  if (ranked.length === 0) throw nothingIn(entries);
  const tried = candidates(ranked, options);
  return firstThatReads({ view, tried, ranked, options, mostBytes });
}

/** Files that are zips inside, by an entry that only they have. */
const OTHER: readonly (readonly [RegExp, string, string])[] = [
  [/^xl\//, 'a spreadsheet workbook (xlsx)', 'Save the sheet as CSV.'],
  [/^(word|ppt)\//, 'an office document', 'Export the recording as CSV.'],
  [/^mimetype$/, 'an office document or book', 'Save the sheet as CSV.'],
  [/^(AndroidManifest\.xml|META-INF\/MANIFEST\.MF)$/, 'a program', 'Give the recording that it made.'],
  [/\.kml$/, 'a map with positions', 'Record the accelerometer; positions are far too slow to show shaking.'],
];

function refuseOther(entries: readonly ZipEntry[]): void {
  for (const [pattern, kind, remedy] of OTHER) {
    const found = entries.find(({ name }) => pattern.test(name));
    if (!found || entries.some(({ name }) => /\.(csv|tsv|txt|wav)$/i.test(name))) continue;
    throw new RecordingError('readZip', {
      code: 'not-zip',
      found: `this is ${kind}.`,
      remedy,
      offset: found.offset,
    });
  }
}

function nothingIn(entries: readonly ZipEntry[]): RecordingError {
  const names = entries.slice(0, 6).map(({ name }) => `"${name.slice(0, 60)}"`);
  return new RecordingError('readZip', {
    code: 'no-rows',
    offset: entries[0]?.offset ?? 0,
    found:
      names.length === 0
        ? 'there is no file in the zip.'
        : `none of the ${entries.length} files in the zip looks like a recording (${listText(names)}).`,
    remedy: 'Export the recording again, as CSV.',
  });
}

function candidates(
  ranked: readonly RankedEntry[],
  { entry, sensor }: ReadZipOptions,
): readonly RankedEntry[] {
  if (entry !== undefined) {
    const wanted = entry.toLowerCase();
    const found =
      ranked.find(({ name }) => name.toLowerCase() === wanted) ??
      ranked.find(({ name }) => name.toLowerCase().endsWith(wanted));
    if (found) return [found];
    throw new RecordingError('readZip', {
      code: 'no-such-entry',
      offset: ranked[0]?.offset ?? 0,
      found: `there is no "${entry}" in the zip; it holds ${listText(ranked.slice(0, 12).map(({ name }) => name))}.`,
      remedy: 'Give options.entry one of these names.',
    });
  }
  const turning = sensor !== undefined && /^(rot|gyr|turn)/i.test(sensor);
  const asked = ranked.filter(({ says }) => (says === 'rotation') === turning);
  return (asked.length > 0 ? asked : ranked).slice(0, MOST_TRIED);
}

interface Trying {
  readonly view: DataView;
  readonly tried: readonly RankedEntry[];
  readonly ranked: readonly RankedEntry[];
  readonly options: ReadZipOptions;
  readonly mostBytes: number;
}

function firstThatReads({ view, tried, ranked, options, mostBytes }: Trying): Recording {
  let left = mostBytes;
  let fault: RecordingError | undefined;
  for (const entry of tried) {
    // What cannot be unpacked is told; another file in its stead would not be what the reader expects.
    const content = unpackEntry(view, { entry, most: left });
    left -= content.length;
    try {
      return withEntries(readContent(content, { entry, options }), { entry, ranked, fault });
    } catch (error) {
      if (!(error instanceof RecordingError)) throw error;
      fault ??= within(entry, error);
    }
  }
  throw fault ?? nothingIn([]);
}

function readContent(
  content: Uint8Array,
  { entry, options }: { entry: RankedEntry; options: ReadZipOptions },
): Recording {
  const name = options.name ?? entry.name.replace(/^.*\//, '').replace(/\.[^.]{1,5}$/, '');
  const kind = sniffFile(content);
  if (kind.reader === 'readWav') return readWav(content, { name });
  if (kind.reader !== 'readDelimited')
    throw new RecordingError('readZip', {
      code: 'unsupported',
      offset: 0,
      found: `it is ${kind.format}.`,
      remedy: kind.advice,
    });
  const hints = entry.says === undefined ? options : { ...options, fileSays: entry.says };
  return readText(decodeText(content), { ...hints, name });
}

function within({ name }: RankedEntry, { code, found, remedy, place }: RecordingError): RecordingError {
  return new RecordingError('readZip', { ...place, code, found: `in "${name}": ${found}`, remedy });
}

interface Chosen {
  readonly entry: RankedEntry;
  readonly ranked: readonly RankedEntry[];
  /** Of a likelier file that does not read. */
  readonly fault: RecordingError | undefined;
}

function withEntries(recording: Recording, { entry, ranked, fault }: Chosen): Recording {
  const others = ranked.filter((other) => other !== entry).map(({ name }) => name);
  const offered = listText(others.slice(0, 8).map((name) => `"${name}"`));
  const more = others.length > 8 ? ` and ${others.length - 8} more` : '';
  const note =
    others.length === 0
      ? `"${entry.name}" was read from the zip.`
      : `"${entry.name}" was read from the zip; options.entry reads another: ${offered}${more}.`;
  const passed = fault ? [`A likelier file was passed over: ${fault.found}`] : [];
  const { sampling } = recording;
  return {
    ...recording,
    sampling: { ...sampling, entries: [entry.name, ...others], notes: [note, ...passed, ...sampling.notes] },
  };
}
