import { type Plan } from './choose-columns.js';
import { fitTimeBase, type FittedTime } from './fit-time-base.js';
import { longestPiece } from './longest-piece.js';
import { orderRows } from './order-rows.js';
import { type RawColumns } from './read-columns.js';
import { RecordingError } from './recording-error.js';
import { scaleStamps } from './scale-stamps.js';
import { type Table } from './text-table.js';
import { type ReadDelimitedOptions, type Sampling } from './types.js';

/** Rows in order, with what their stamps say about time. */
export interface LaidRows {
  readonly axes: readonly Float64Array[];
  readonly fitted: FittedTime;
  readonly rateFrom: Sampling['rateFrom'];
  readonly timeUnit: string;
  readonly equalStamps: number;
  readonly unsortedRows: number;
  readonly doubledRows: number;
  readonly notes: readonly string[];
}

interface Source {
  readonly table: Table;
  readonly plan: Plan;
  readonly raw: RawColumns;
  readonly options: ReadDelimitedOptions;
}

/**
 * Puts rows in order and fits their time.
 *
 * @throws RecordingError where neither stamps nor a rate are known
 */
export function layInTime({ table, plan, raw, options }: Source): LaidRows {
  const rate = options.sampleRate ?? (plan.time ? undefined : table.stated.rate);
  if (rate !== undefined) return byRate(raw, rate, options.sampleRate === undefined ? 'header' : 'given');
  if (!plan.time) throw needsRate(plan);
  const scaled = scaleStamps(raw.stamps, plan, options.timeUnit);
  const ordered = orderRows(scaled.stamps, raw.axes);
  const { from, to } = longestPiece(ordered.stamps);
  const stamps = ordered.stamps.subarray(from, to);
  const equalStamps = countEqual(stamps);
  const single = withoutDoubles(
    stamps,
    ordered.axes.map((axis) => axis.subarray(from, to)),
    equalStamps,
  );
  const fitted = fitTimeBase(single.stamps);
  if (!fitted) throw standing();
  const { unsortedRows, leftOut } = ordered;
  const apart = ordered.stamps.length - stamps.length;
  return {
    ...single,
    fitted,
    rateFrom: 'stamps',
    timeUnit: scaled.unit,
    equalStamps,
    unsortedRows,
    doubledRows: single.doubledRows,
    notes: [...scaled.notes, ...orderNotes({ unsortedRows, leftOut, apart })],
  };
}

function byRate(raw: RawColumns, rate: number, rateFrom: 'given' | 'header'): LaidRows {
  const period = 1 / rate;
  const notes =
    rateFrom === 'given' ? [] : [`There is no time column; the head of the file states ${rate} Hz.`];
  const fitted = { kind: 'counts', period, longestPeriod: period, missing: [], jitter: 0, step: 0 } as const;
  return {
    axes: raw.axes,
    fitted,
    rateFrom,
    timeUnit: '',
    equalStamps: 0,
    unsortedRows: 0,
    doubledRows: 0,
    notes,
  };
}

function orderNotes({
  unsortedRows,
  leftOut,
  apart,
}: Record<'unsortedRows' | 'leftOut' | 'apart', number>): string[] {
  return [
    ...(unsortedRows > 0 ? [`${unsortedRows} rows stood out of order and were sorted by their stamps.`] : []),
    ...(leftOut > 0
      ? [
          `The clock starts again within the file; the longest stretch was read and ${leftOut} rows were left out.`,
        ]
      : []),
    ...(apart > 0
      ? [
          `Long pauses part the file; the longest piece was read and ${apart} rows beyond the pauses were left out.`,
        ]
      : []),
  ];
}

function countEqual(stamps: Float64Array): number {
  let equal = 0;
  for (let i = 1; i < stamps.length; i++) if (stamps[i] === stamps[i - 1]) equal++;
  return equal;
}

interface SingleRows {
  readonly stamps: Float64Array;
  readonly axes: readonly Float64Array[];
  readonly doubledRows: number;
}

/**
 * Leaves out rows that repeat stamp and values alike, unless equal stamps are the rule in the file, or most of them
 * stand over different values: then equal values are chance.
 */
function withoutDoubles(
  stamps: Float64Array,
  axes: readonly Float64Array[],
  equalStamps: number,
): SingleRows {
  if (equalStamps === 0 || equalStamps > stamps.length / 3 + 1) return { stamps, axes, doubledRows: 0 };
  const same = (a: number | undefined, b: number | undefined): boolean => Object.is(a, b);
  const keep = (_: number, i: number): boolean =>
    i === 0 || stamps[i] !== stamps[i - 1] || axes.some((axis) => !same(axis[i], axis[i - 1]));
  const kept = stamps.filter(keep);
  if (stamps.length - kept.length < equalStamps / 2) return { stamps, axes, doubledRows: 0 };
  return {
    stamps: kept,
    axes: axes.map((axis) => axis.filter(keep)),
    doubledRows: stamps.length - kept.length,
  };
}

function needsRate(plan: Plan): RecordingError {
  const roles = plan.axes.map(({ role }) => role).join(', ');
  return new RecordingError('readDelimited', {
    code: 'needs-sample-rate',
    found: `there are values (${roles}) but no time column, so the sampling rate is not known.`,
    remedy: 'Give options.sampleRate in Hz; the logger shows it in its settings.',
  });
}

function standing(): RecordingError {
  return new RecordingError('readDelimited', {
    code: 'bad-time',
    found: 'the stamps in the time column do not move on.',
    remedy: 'Give options.sampleRate in Hz, or name another time column in options.columns.time.',
  });
}
