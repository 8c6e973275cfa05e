/** Rows in the order of their stamps. */
export interface OrderedRows {
  /** s */
  readonly stamps: Float64Array;
  readonly axes: readonly Float64Array[];
  readonly unsortedRows: number;
  /** Rows left out since the clock started again there. */
  readonly leftOut: number;
}

/**
 * Sorts rows by their stamps; where the clock started again on the way, keeps the longest stretch instead.
 *
 * @param stamps - s
 * @param axes - values of the same rows
 */
export function orderRows(stamps: Float64Array, axes: readonly Float64Array[]): OrderedRows {
  const starts = [0];
  let late = 0;
  let latest = -Infinity;
  for (let i = 0; i < stamps.length; i++) {
    const stamp = stamps[i] ?? 0;
    if (stamp < (stamps[i - 1] ?? -Infinity)) starts.push(i);
    if (stamp < latest) late++;
    else latest = stamp;
  }
  if (late === 0) return { stamps, axes, unsortedRows: 0, leftOut: 0 };
  const order = Uint32Array.from(stamps, (_, i) => i).sort(
    (a, b) => (stamps[a] ?? 0) - (stamps[b] ?? 0) || a - b,
  );
  if (startsAgain(order, starts.length)) return longestStretch(stamps, axes, starts);
  const sorted = (values: Float64Array): Float64Array => Float64Array.from(order, (i) => values[i] ?? NaN);
  return { stamps: sorted(stamps), axes: axes.map(sorted), unsortedRows: late, leftOut: 0 };
}

/** Blocks that were merely swapped fit between one another; two recordings on one clock mesh row by row. */
function startsAgain(order: Uint32Array, blocks: number): boolean {
  if (blocks > Math.max(2, order.length / 100)) return false;
  let jumps = 0;
  for (let i = 1; i < order.length; i++) if (order[i] !== (order[i - 1] ?? 0) + 1) jumps++;
  return jumps > 6 * blocks;
}

function longestStretch(
  stamps: Float64Array,
  axes: readonly Float64Array[],
  starts: readonly number[],
): OrderedRows {
  const ends = [...starts.slice(1), stamps.length];
  const lengths = starts.map((start, i) => (ends[i] ?? 0) - start);
  const best = lengths.indexOf(Math.max(...lengths));
  const cut = (values: Float64Array): Float64Array => values.slice(starts[best], ends[best]);
  return {
    stamps: cut(stamps),
    axes: axes.map(cut),
    unsortedRows: 0,
    leftOut: stamps.length - (lengths[best] ?? 0),
  };
}
