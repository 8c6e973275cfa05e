/**
 * Moves places apart as little as order and room allow, so that each has its own width.
 *
 * @param wanted - places that are wanted, ascending
 * @param options - least distance between neighbours, and the ends within which they must stay
 * @returns places, ascending, at least `apart` from each other, or evenly spread where the room is too short
 */
export function spread(
  wanted: readonly number[],
  { apart, from, to }: { readonly apart: number; readonly from: number; readonly to: number },
): number[] {
  const count = wanted.length;
  if (count === 0) return [];
  if (count > 1 && apart * (count - 1) >= to - from) {
    return wanted.map((_, index) => from + ((to - from) * index) / (count - 1));
  }
  const offsets = wanted.map((place, index) => place - apart * index);
  return pooledMeans(offsets).map((place, index) => {
    const room = to - apart * (count - 1);
    return Math.min(Math.max(place, from), room) + apart * index;
  });
}

/** Isotonic regression: the ascending list nearest to `values` in the sum of squares. */
function pooledMeans(values: readonly number[]): number[] {
  const pools: { sum: number; count: number }[] = [];
  for (const value of values) {
    let pool = { sum: value, count: 1 };
    for (
      let last = pools.at(-1);
      last && last.sum / last.count > pool.sum / pool.count;
      last = pools.at(-1)
    ) {
      pool = { sum: pool.sum + last.sum, count: pool.count + last.count };
      pools.pop();
    }
    pools.push(pool);
  }
  return pools.flatMap(({ sum, count }) => Array.from({ length: count }, () => sum / count));
}
