/**
 * Median of each value and those within `reach` of it, cut off at the ends: a sorted list in which one value goes and one comes.
 *
 * @param range - `first` and `last` index to use; what lies outside is neither used nor filled
 */
export function runningMedian(
  values: Float64Array,
  { first, last, reach }: { readonly first: number; readonly last: number; readonly reach: number },
): Float64Array {
  const medians = new Float64Array(values.length);
  const sorted = new Float64Array(2 * reach + 1);
  let count = 0;
  for (let k = first; k <= Math.min(last, first + reach - 1); k++) insert(sorted, count++, values[k] ?? 0);
  for (let k = first; k <= last; k++) {
    if (k + reach <= last) insert(sorted, count++, values[k + reach] ?? 0);
    const upper = sorted[count >> 1] ?? 0;
    medians[k] = count % 2 === 1 ? upper : (upper + (sorted[(count >> 1) - 1] ?? 0)) / 2;
    if (k - reach >= first) remove(sorted, count--, values[k - reach] ?? 0);
  }
  return medians;
}

function insert(sorted: Float64Array, count: number, value: number): void {
  const at = placeOf(sorted, count, value);
  sorted.copyWithin(at + 1, at, count);
  sorted[at] = value;
}

function remove(sorted: Float64Array, count: number, value: number): void {
  const at = placeOf(sorted, count, value);
  sorted.copyWithin(at, at + 1, count);
}

/** Index of the first entry that is not less than `value`. */
function placeOf(sorted: Float64Array, count: number, value: number): number {
  let low = 0;
  let high = count;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sorted[middle] ?? 0) < value) low = middle + 1;
    else high = middle;
  }
  return low;
}
