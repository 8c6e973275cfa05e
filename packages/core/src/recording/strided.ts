/**
 * An evenly spread sample of values.
 *
 * @param values - all of them
 * @param most - about how many to take
 */
export function strided(values: Float64Array, most: number): Float64Array {
  const stride = Math.max(1, Math.floor(values.length / most));
  return Float64Array.from({ length: Math.ceil(values.length / stride) }, (_, i) => values[i * stride] ?? 0);
}
