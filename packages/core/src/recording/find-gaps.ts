import { quantile } from '../numerics/quantile.js';

/** Rows that are missing before a row. */
export interface MissingRows {
  /** The row that stands after them. */
  readonly before: number;
  readonly count: number;
}

interface Stamps {
  /** s, ascending */
  readonly stamps: Float64Array;
  /** s, the time from row to row */
  readonly period: number;
  /** s, the step to which the stamps are rounded; 0 where they are not */
  readonly step: number;
}

/**
 * Finds where rows are missing.
 *
 * @remarks A late stamp is no gap: rows that were delivered late are soon followed by rows that lie denser, and the
 * stamps come back to the line they left. Where rows are missing they never come back. A place counts as a gap if the
 * stamps stand at least 0.6 of a period later after it than before it, by the median and by the early ones alike, and
 * still do so twice the gap's length later. Gaps shorter than the stamps' own scatter cannot be seen.
 */
export function findGaps({ stamps, period, step }: Stamps): MissingRows[] {
  const n = stamps.length;
  const fine = inWholePeriods(stamps, period);
  const noise = Math.max(scatter(stamps, { period, fine }), step / period / Math.sqrt(12));
  const wide = Math.max(fine ? 6 : Math.min(Math.max((noise / 0.05) ** 2, 32), 128), (2 * step) / period);
  const window = Math.max(2, Math.min(Math.ceil(wide), 256, Math.floor(n / 3)));
  const least = Math.max(0.6, (7 * noise) / Math.sqrt(window));
  const threshold = 0.5 * period + Math.max(period, step) * 0.999;
  const search = { stamps, period, window, least, fine };
  const gaps: MissingRows[] = [];
  let missing = 0;
  for (let i = 1; i < n; i++) {
    const pause = (stamps[i] ?? 0) - (stamps[i - 1] ?? 0);
    if (pause <= threshold) continue;
    const count = missingAt(search, { row: i, gaps, missing });
    if (count > 0) {
      gaps.push({ before: i, count });
      missing += count;
    }
  }
  return gaps;
}

interface Search {
  readonly stamps: Float64Array;
  readonly period: number;
  readonly window: number;
  readonly least: number;
  /** The pauses are whole periods but for a few. */
  readonly fine: boolean;
}

interface Candidate {
  readonly row: number;
  readonly gaps: readonly MissingRows[];
  /** Rows found missing so far. */
  readonly missing: number;
}

function missingAt(search: Search, { row, gaps, missing }: Candidate): number {
  const { window, least, stamps, period, fine } = search;
  const lagged = lagBefore(search, { row, gaps, missing });
  const following = lags(search, { from: row, to: row + window, missing });
  // The last rows may just be late.
  if (!fine && following.length < window / 2) return 0;
  const before = levels(lagged);
  const after = levels(following);
  const raw = Math.min(after.middle - before.middle, after.early - before.early);
  // Half a period of room: drift may have hidden some of the shift. Most late stamps end here.
  if (raw < least - 0.5 || ratesDiffer(search, row)) return 0;
  const shift = raw - (fine ? 0 : drifting(search, row)) * 0.5 * (lagged.length + following.length);
  if (shift < least) return 0;
  const from = row + Math.ceil(2 * shift);
  const stays = [0, 2 * window].every((wait) => {
    const later = lags(search, { from: from + wait, to: from + wait + window, missing });
    return later.length < window / 2 || levels(later).middle - before.middle > 0.5 * shift;
  });
  // The pause itself is the better measure where the stamps are finer than the period.
  const pause = ((stamps[row] ?? 0) - (stamps[row - 1] ?? 0)) / period - 1;
  const count = fine || Math.abs(pause - shift) < 0.75 ? pause : shift;
  return stays ? Math.max(1, Math.round(count)) : 0;
}

function levels(lagged: Float64Array): { early: number; middle: number } {
  const sorted = lagged.slice().sort();
  return {
    early: sorted[Math.floor(0.1 * (sorted.length - 1))] ?? 0,
    middle: sorted[sorted.length >> 1] ?? 0,
  };
}

/** How far the stamps of rows stand behind their count, in periods. */
function lags(
  { stamps, period }: Search,
  { from, to, missing }: { from: number; to: number; missing: number },
): Float64Array {
  const end = Math.min(to, stamps.length);
  const origin = stamps[0] ?? 0;
  return Float64Array.from(
    { length: Math.max(0, end - from) },
    (_, k) => ((stamps[from + k] ?? 0) - origin) / period - (from + k) - missing,
  );
}

function lagBefore(search: Search, { row, gaps, missing }: Candidate): Float64Array {
  const from = Math.max(0, row - search.window);
  const values = lags(search, { from, to: row, missing });
  // Rows before an earlier gap were counted with fewer missing.
  for (const gap of gaps.slice(-search.window)) {
    for (let k = from; k < Math.min(gap.before, row); k++)
      values[k - from] = (values[k - from] ?? 0) + gap.count;
  }
  return values;
}

/** True where rows come at another rate on one side: then every pause is long, and nothing is missing. */
function ratesDiffer({ stamps, period, window }: Search, row: number): boolean {
  const near = Math.max(window, 8);
  const pauses = (from: number, to: number): number => {
    const a = Math.max(0, from);
    const b = Math.min(stamps.length - 1, to);
    return b - a < 4
      ? period
      : quantile(
          Float64Array.from({ length: b - a }, (_, k) => (stamps[a + k + 1] ?? 0) - (stamps[a + k] ?? 0)),
          0.5,
        );
  };
  return Math.max(pauses(row - 1 - near, row - 1), pauses(row, row + near)) > 1.5 * period;
}

/** By how much of a period the rows lag further with each row, in the neighbourhood; 0 unless both sides agree. */
function drifting(search: Search, row: number): number {
  const { window, stamps } = search;
  if (window < 6 || row < 2 * window || row + 2 * window > stamps.length) return 0;
  const middle = (from: number): number =>
    quantile(lags(search, { from, to: from + window, missing: 0 }), 0.5);
  const before = (middle(row - window) - middle(row - 2 * window)) / window;
  const after = (middle(row + window) - middle(row)) / window;
  if (before * after <= 0) return 0;
  return Math.abs(before) < Math.abs(after) ? before : after;
}

function inWholePeriods(stamps: Float64Array, period: number): boolean {
  let whole = 0;
  for (let i = 1; i < stamps.length; i++) {
    const pause = ((stamps[i] ?? 0) - (stamps[i - 1] ?? 0)) / period;
    if (pause > 0.5 && Math.abs(pause - Math.round(pause)) < 0.12) whole++;
  }
  return whole > 0.9 * (stamps.length - 1);
}

/**
 * Scatter of the stamps about their local line, in periods, from second differences and so free of drift. Where the
 * pauses are whole periods, neighbours tell it; else the scatter holds on over rows, and wider spans do.
 */
function scatter(stamps: Float64Array, { period, fine }: { period: number; fine: boolean }): number {
  // Of a normal deviate's absolute value half is below 0.6745 of its deviation and 80 % below 1.2816; a second
  // difference has six times the variance.
  const [share, deviate] = fine ? [0.5, 0.6745] : [0.8, 1.2816];
  const spans = fine ? [1] : [1, 8].filter((span) => stamps.length > 4 * span);
  return Math.max(
    0,
    ...spans.map((span) => quantile(bends(stamps, span), share) / deviate / Math.sqrt(6) / period),
  );
}

function bends(stamps: Float64Array, span: number): number[] {
  const stride = Math.max(1, Math.floor(stamps.length / 4000));
  const found: number[] = [];
  for (let i = span; i + span < stamps.length; i += stride) {
    found.push(Math.abs((stamps[i + span] ?? 0) - 2 * (stamps[i] ?? 0) + (stamps[i - span] ?? 0)));
  }
  return found.length === 0 ? [0] : found;
}
