import { type ZipEntry } from './zip-directory.js';

/** A file that may hold a recording, and what its name says. */
export interface RankedEntry extends ZipEntry {
  readonly says: 'acceleration' | 'rotation' | undefined;
}

const READABLE = /\.(csv|tsv|txt|dat|log|json|jsonl|ndjson|asc|wav|wave)$/i;
const HIDDEN = /(^|\/)(__MACOSX\/|\.|Thumbs\.db|desktop\.ini)/;

/** English, German, French, Spanish, Italian, Dutch. */
const ACCELERATION = /acc|beschl|accél|acel|versnel|g-?force|vibration/i;
const ROTATION = /gyr|giro|rotation|angular|dreh/i;
/** What else phones write, which never is the shaking; the wanted file is looked for among the rest first. */
const OTHER =
  /meta|device|annot|info|readme|settings|location|gps|position|baro|pressure|magnet|compass|light|step|pedo|orient|gravity|battery|network|camera|heart|temperature|humidity|altitude|activity/i;

/**
 * Puts the files of a zip in the order in which they are likely to be the accelerometer's, the likeliest first.
 *
 * @param entries - all files
 */
export function rankEntries(entries: readonly ZipEntry[]): RankedEntry[] {
  return entries
    .filter(({ name, bytes }) => bytes > 0 && !name.endsWith('/') && !HIDDEN.test(name))
    .filter(({ name }) => READABLE.test(name) || !/\.[a-z0-9]{1,5}$/i.test(name))
    .map((entry): RankedEntry => ({ ...entry, says: quantityOf(baseName(entry.name)) }))
    .toSorted((a, b) => merit(b) - merit(a) || b.bytes - a.bytes);
}

function baseName(path: string): string {
  return path.replace(/^.*\//, '');
}

function quantityOf(name: string): RankedEntry['says'] {
  if (ROTATION.test(name)) return 'rotation';
  return ACCELERATION.test(name) ? 'acceleration' : undefined;
}

function merit({ name, says }: RankedEntry): number {
  const base = baseName(name);
  if (says === 'rotation') return 1;
  if (OTHER.test(base) && says === undefined) return 0;
  if (/\.wave?$/i.test(base)) return 2;
  if (says === undefined) return 3;
  // With gravity in it the unit can be checked; uncalibrated values are the sensor's raw ones.
  if (/uncal/i.test(base)) return 4;
  return /lin|user|without|ohne|sans/i.test(base) ? 5 : 6;
}
