import { type Plan } from './choose-columns.js';
import { quantile } from '../numerics/quantile.js';
import { RecordingError } from './recording-error.js';
import { strided } from './strided.js';
import { parseUnit } from './units.js';
import { type TimeUnit } from './types.js';

/** Stamps in seconds from the first, and how their unit was found. */
export interface ScaledStamps {
  /** s, from the first stamp of the file */
  readonly stamps: Float64Array;
  readonly unit: string;
  readonly notes: readonly string[];
}

const EPOCHS = [
  { unit: 'ns', least: 6e17, most: 5e18, factor: 1e-9 },
  { unit: 'µs', least: 6e14, most: 5e15, factor: 1e-6 },
  { unit: 'ms', least: 6e11, most: 5e12, factor: 1e-3 },
  { unit: 's', least: 6e8, most: 5e9, factor: 1 },
] as const;

/** Hz, rates that loggers use; the unit of nameless stamps is the one that gives such a rate. */
const USUAL = { least: 4, most: 12_000 };

/**
 * Brings stamps to seconds, in place, on stamps that this room owns.
 *
 * @param raw - stamps as read; overwritten
 * @param plan - the columns chosen
 * @param asked - the caller's unit
 * @throws RecordingError where the unit cannot be told
 */
export function scaleStamps(raw: Float64Array, plan: Plan, asked: TimeUnit | undefined): ScaledStamps {
  const form = plan.time?.column.form ?? 'number';
  if (form !== 'number')
    return { ...inSeconds(form === 'clock' ? pastMidnight(raw) : raw, 1), unit: form, notes: [] };
  const stated = asked === undefined ? plan.time?.column.header.unit : parseUnit(asked);
  const epoch = EPOCHS.find(({ least, most }) => (raw[0] ?? 0) >= least && (raw[0] ?? 0) <= most);
  if (stated?.quantity === 'time' && !contradicts(stated.factor, epoch?.factor)) {
    return { ...inSeconds(raw, stated.factor), unit: stated.name, notes: [] };
  }
  if (epoch) return { ...inSeconds(raw, epoch.factor), unit: `${epoch.unit} since 1970`, notes: [] };
  return guessUnit(raw);
}

/** A header that says "seconds" over figures that can only be an epoch in nanoseconds is a slip of the logger. */
function contradicts(stated: number, epoch: number | undefined): boolean {
  return epoch !== undefined && stated > 100 * epoch;
}

/** In place: two columns of stamps would be held at once else. */
function inSeconds(raw: Float64Array, factor: number): { stamps: Float64Array } {
  const first = raw[0] ?? 0;
  for (let i = 0; i < raw.length; i++) raw[i] = ((raw[i] ?? 0) - first) * factor;
  return { stamps: raw };
}

/** A clock that falls from 24 h to 0 (or from 60 min to 0) has gone round. */
function pastMidnight(raw: Float64Array): Float64Array {
  let turns = 0;
  return raw.map((stamp, i) => {
    const fall = (raw[i - 1] ?? stamp) - stamp;
    if (fall > 43_200) turns += 86_400;
    else if (fall > 3000 && fall <= 3600) turns += 3600;
    return stamp + turns;
  });
}

function guessUnit(raw: Float64Array): ScaledStamps {
  const rising = raw.every((stamp, i) => i === 0 || stamp >= (raw[i - 1] ?? stamp));
  const sorted = rising ? raw : raw.slice().sort();
  const steps = sorted.subarray(1).map((stamp, i) => stamp - (sorted[i] ?? 0));
  const span = (sorted.at(-1) ?? 0) - (sorted[0] ?? 0);
  const middle = quantile(strided(steps, 5000), 0.5);
  const step = middle > 0 ? middle : span / Math.max(raw.length - 1, 1);
  if (!(step > 0)) throw standing();
  if (step === 1 && steps.every((value) => value === 1)) throw counting();
  for (const [unit, factor] of [
    ['s', 1],
    ['ms', 1e-3],
    ['µs', 1e-6],
    ['ns', 1e-9],
  ] as const) {
    const rate = 1 / (step * factor);
    if (rate < USUAL.least || rate > USUAL.most) continue;
    const notes =
      unit === 's'
        ? []
        : [`The time has no unit; in ${unit} its steps give a usual rate, so it was read as ${unit}.`];
    return { ...inSeconds(raw, factor), unit, notes };
  }
  const note =
    'The time has no unit and gives no usual rate in any: read as seconds. Give options.timeUnit if it is another.';
  return { ...inSeconds(raw, 1), unit: 's', notes: [note] };
}

function standing(): RecordingError {
  return new RecordingError('readDelimited', {
    code: 'bad-time',
    found: 'all stamps in the time column are the same.',
    remedy: 'Give options.sampleRate in Hz, or name another time column in options.columns.time.',
  });
}

function counting(): RecordingError {
  return new RecordingError('readDelimited', {
    code: 'needs-time-unit',
    found:
      'the time column has no unit and counts by ones, so it may hold seconds, milliseconds or mere row numbers.',
    remedy: 'Give options.timeUnit, or options.sampleRate in Hz.',
  });
}
