/**
 * A quantile of numbers, by straight line between the sorted values.
 *
 * @param values - finite numbers
 * @param share - 0 to 1
 * @returns NaN where there are no values
 * @see Rob Hyndman and Yanan Fan, "Sample quantiles in statistical packages", The American Statistician 50(4), 1996, definition 7
 */
export function quantile(values: ArrayLike<number>, share: number): number {
  const sorted = Float64Array.from(values).sort();
  const place = (sorted.length - 1) * share;
  const below = Math.floor(place);
  const low = sorted[below] ?? NaN;
  const high = sorted[below + 1] ?? low;
  return low + (high - low) * (place - below);
}
