import { findGaps, type MissingRows } from './find-gaps.js';
import { fitLine } from './fit-line.js';
import { quantile } from '../numerics/quantile.js';
import { roundingStep } from './rounding-step.js';
import { type TimeBase } from './types.js';

/** How rows lie in time. */
export interface FittedTime {
  readonly kind: TimeBase;
  /** s, from sample to sample: the mean where the base is `counts`, the shortest that lasts else. */
  readonly period: number;
  /** s, the longest period that lasts. */
  readonly longestPeriod: number;
  /** Rows missing, in the count of rows. */
  readonly missing: readonly MissingRows[];
  /** s, deviation of the stamps about the base. */
  readonly jitter: number;
  /** s */
  readonly step: number;
  /** s, true time of each place in the count (rows and missing rows); absent where the base is `counts`. */
  readonly times?: Float64Array;
}

/** Local rates that differ by less than this from the mean are taken for the wander of the stamps. */
const STEADY = 0.002;
/** The even base is at most this many times faster than the mean rate. */
const FASTEST = 4;

/**
 * Fits the stamps of rows against their count.
 *
 * A sensor samples evenly and its stamps are late, rounded or bunched; the count of rows is the better clock. Only
 * where the rate itself moves, or where the spacing is irregular by nature, are the stamps followed.
 *
 * @param stamps - s, ascending
 * @returns undefined where all stamps are equal
 */
export function fitTimeBase(stamps: Float64Array): FittedTime | undefined {
  const step = roundingStep(stamps);
  const guess = guessPeriod(stamps, step);
  if (!(guess > 0)) return undefined;
  if (isIrregular(stamps, guess)) return irregular(stamps, { guess, step });
  const missing = findGaps({ stamps, period: guess, step });
  const places = placesOf(stamps.length, missing);
  const line = fitLine(places, stamps);
  if (!(line.slope > 0)) return undefined;
  const base = { missing, jitter: line.deviation, step };
  const local = localRates({ stamps, places, period: line.slope, step });
  if (!local) return { ...base, kind: 'counts', period: line.slope, longestPeriod: line.slope };
  return { ...base, ...local, kind: 'piecewise' };
}

/** The place of each row in the count that includes the missing ones. */
export function placesOf(rows: number, missing: readonly MissingRows[]): Float64Array {
  const places = new Float64Array(rows);
  let shift = 0;
  let next = 0;
  for (let i = 0; i < rows; i++) {
    while (missing[next]?.before === i) shift += missing[next++]?.count ?? 0;
    places[i] = i + shift;
  }
  return places;
}

function guessPeriod(stamps: Float64Array, step: number): number {
  const n = stamps.length;
  const lagged = (lag: number): Float64Array => {
    const stride = Math.max(1, Math.floor(n / 20_000));
    const length = Math.max(1, Math.floor((n - 1 - lag) / stride) + 1);
    return Float64Array.from(
      { length },
      (_, k) => ((stamps[k * stride + lag] ?? 0) - (stamps[k * stride] ?? 0)) / lag,
    );
  };
  const single = lagged(1);
  const middle = quantile(single, 0.5);
  if (middle > 0 && quantile(single, 0.75) - quantile(single, 0.25) < 0.02 * middle) return middle;
  const mean = ((stamps[n - 1] ?? 0) - (stamps[0] ?? 0)) / (n - 1);
  const lag = Math.max(1, Math.min(Math.floor(n / 4), Math.max(256, Math.ceil((100 * step) / mean))));
  const wide = quantile(lagged(lag), 0.5);
  return wide > 0 ? wide : mean;
}

/**
 * True where the spacing itself is irregular: then the stamps stray ever further from an even count, as the root of the
 * number of rows, while late or rounded stamps of an even sampling stay as near to it as they were.
 */
function isIrregular(stamps: Float64Array, period: number): boolean {
  const n = stamps.length;
  if (n < 128) return false;
  const bend = (lag: number): number => {
    const stride = Math.max(1, Math.floor(n / 4000));
    const bends: number[] = [];
    for (let i = 0; i + 2 * lag < n; i += stride) {
      bends.push(Math.abs((stamps[i + 2 * lag] ?? 0) - 2 * (stamps[i + lag] ?? 0) + (stamps[i] ?? 0)));
    }
    return quantile(bends, 0.5);
  };
  const near = bend(1);
  return near > 0.06 * period && bend(32) > 2.5 * near;
}

function irregular(stamps: Float64Array, { guess, step }: { guess: number; step: number }): FittedTime {
  const pauses = stamps.subarray(1).map((stamp, i) => stamp - (stamps[i] ?? 0));
  const mean = ((stamps.at(-1) ?? 0) - (stamps[0] ?? 0)) / (stamps.length - 1);
  // Rows that come in bunches would ask for a rate that the pauses between them do not bear.
  const period = Math.max(Math.min(quantile(pauses, 0.5) || guess, guess), mean / FASTEST);
  const variance = pauses.reduce((sum, pause) => sum + (pause - mean) ** 2, 0) / pauses.length;
  const longestPeriod = Math.max(quantile(pauses, 0.95), period);
  return {
    kind: 'stamps',
    period,
    longestPeriod,
    missing: [],
    jitter: Math.sqrt(variance),
    step,
    times: stamps,
  };
}

interface Placed {
  readonly stamps: Float64Array;
  readonly places: Float64Array;
  readonly period: number;
  readonly step: number;
}

/** The true time of each place where the rate moves; undefined where it is steady. */
function localRates({
  stamps,
  places,
  period,
  step,
}: Placed): Pick<FittedTime, 'period' | 'longestPeriod' | 'times'> | undefined {
  const n = stamps.length;
  const block = Math.max(32, Math.ceil(n / 256), Math.ceil((20 * step) / period));
  if (n < 4 * block) return undefined;
  const fits = Array.from({ length: Math.floor(n / block) }, (_, b) => {
    const to = b === Math.floor(n / block) - 1 ? n : (b + 1) * block;
    const x = places.subarray(b * block, to);
    return { ...fitLine(x, stamps.subarray(b * block, to)), middle: ((x[0] ?? 0) + (x.at(-1) ?? 0)) / 2 };
  });
  const noise = quantile(
    fits.map(({ deviation }) => deviation),
    0.5,
  );
  // Standard error of a slope fitted to evenly spaced points: deviation · √12 / count^1.5.
  const error = (noise * Math.sqrt(12)) / block ** 1.5 / period;
  const rates = fits.map(({ slope }) => slope / period - 1);
  const low = Math.max(quantile(rates, 0.05), 1 / FASTEST - 1);
  const high = quantile(rates, 0.95);
  if (high - low < 2 * Math.max(STEADY, 6 * error)) return undefined;
  const times = noise < 0.03 * period ? timesByStamps(stamps, places) : timesByBlocks(fits, places);
  return { period: period * (1 + low), longestPeriod: period * (1 + high), times };
}

function timesByStamps(stamps: Float64Array, places: Float64Array): Float64Array {
  return straightBetween(places, stamps);
}

function timesByBlocks(
  fits: readonly { slope: number; intercept: number; middle: number }[],
  places: Float64Array,
): Float64Array {
  const last = places.at(-1) ?? 0;
  const at = (fit: (typeof fits)[number] | undefined, x: number): number =>
    fit ? fit.intercept + fit.slope * x : NaN;
  const knots = [0, ...fits.map(({ middle }) => middle), last];
  const values = [at(fits[0], 0), ...fits.map((fit) => at(fit, fit.middle)), at(fits.at(-1), last)];
  return straightBetween(Float64Array.from(knots), Float64Array.from(values));
}

function straightBetween(knots: Float64Array, values: Float64Array): Float64Array {
  const times = new Float64Array((knots.at(-1) ?? 0) + 1);
  let k = 0;
  for (let i = 0; i < times.length; i++) {
    while (k + 2 < knots.length && (knots[k + 1] ?? Infinity) <= i) k++;
    const [a = 0, b = 1] = [knots[k], knots[k + 1]];
    const share = b > a ? (i - a) / (b - a) : 0;
    times[i] = (values[k] ?? 0) + share * ((values[k + 1] ?? 0) - (values[k] ?? 0));
  }
  return times;
}
