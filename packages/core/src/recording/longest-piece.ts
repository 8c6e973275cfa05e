import { quantile } from '../numerics/quantile.js';

/** A stretch of rows: from the first, up to but without the last. */
export interface Piece {
  readonly from: number;
  readonly to: number;
}

/** Missing samples that are filled in any case, however few rows there are. */
const ALWAYS_FILLED = 20_000;

/**
 * The longest stretch of rows whose pauses may be filled: together they must not hold more than twice as many samples
 * as there are rows, or a single wrong stamp would ask for any amount of memory.
 *
 * @param stamps - s, ascending
 */
export function longestPiece(stamps: Float64Array): Piece {
  const n = stamps.length;
  // Most files have few pauses, and a sample of them shows it without laying out all.
  const likely = likelyPause(stamps);
  let excess = 0;
  for (let i = 1; i < n; i++) {
    const pause = (stamps[i] ?? 0) - (stamps[i - 1] ?? 0);
    if (pause > 2 * likely) excess += pause;
  }
  if (likely > 0 && excess <= Math.max(2 * n, ALWAYS_FILLED) * likely) return { from: 0, to: n };
  const pauses = stamps.subarray(1).map((stamp, i) => stamp - (stamps[i] ?? 0));
  const sorted = pauses.slice().sort();
  const odd = Math.min(8, Math.max(1, Math.floor(n / 10)));
  const usual = sorted.subarray(0, Math.max(1, sorted.length - odd));
  const mean = usual.reduce((sum, pause) => sum + pause, 0) / usual.length;
  // Among few rows one wrong stamp makes the mean anything; the median holds unless most stamps are equal.
  const typical = likely > 0 ? Math.min(mean, 4 * likely) : mean;
  const allowed = Math.max(2 * n, ALWAYS_FILLED) * typical;
  let total = 0;
  let longest = Infinity;
  for (const pause of sorted) {
    if (pause > 2 * typical) total += pause;
    if (total > allowed) {
      longest = pause;
      break;
    }
  }
  return longestBetween(pauses, longest);
}

/** The median of about 2000 pauses. */
function likelyPause(stamps: Float64Array): number {
  const count = stamps.length - 1;
  const stride = Math.max(1, Math.floor(count / 2000));
  const sample = { length: Math.ceil(count / stride) };
  return quantile(
    Float64Array.from(sample, (_, i) => (stamps[i * stride + 1] ?? 0) - (stamps[i * stride] ?? 0)),
    0.5,
  );
}

function longestBetween(pauses: Float64Array, limit: number): Piece {
  let best: Piece = { from: 0, to: 0 };
  let from = 0;
  for (let i = 0; i <= pauses.length; i++) {
    if (i < pauses.length && (pauses[i] ?? 0) < limit) continue;
    if (i + 1 - from > best.to - best.from) best = { from, to: i + 1 };
    from = i + 1;
  }
  return best;
}
