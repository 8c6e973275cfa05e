/**
 * The step to which values were rounded: the largest power of ten, or half or fifth of one, that divides all of them.
 *
 * @param values - finite values
 * @returns the step in the values' unit; 0 where none shows
 */
export function roundingStep(values: ArrayLike<number>): number {
  const stride = Math.max(1, Math.floor(values.length / 2000));
  let largest = 0;
  const seen: number[] = [];
  for (let i = 0; i < values.length; i += stride) {
    const value = (values[i] ?? 0) - (values[0] ?? 0);
    if (value !== 0) seen.push(value);
    largest = Math.max(largest, Math.abs(values[i] ?? 0));
  }
  if (seen.length < 2 || largest === 0) return 0;
  const tolerance = 4 * Number.EPSILON * largest;
  for (let exponent = Math.floor(Math.log10(largest)); exponent > Math.log10(largest) - 9; exponent--) {
    for (const mantissa of [5, 2, 1]) {
      const step = mantissa * 10 ** exponent;
      if (tolerance > 1e-4 * step) return 0;
      if (seen.every((value) => Math.abs(value - step * Math.round(value / step)) <= 1e-4 * step + tolerance))
        return step;
    }
  }
  return 0;
}
