/** Σ aᵢ bᵢ over the length of `a`. */
export function dot(a: Float64Array, b: Float64Array): number {
  // Two sums keep two additions in flight: half the time of one.
  let even = 0;
  let odd = 0;
  const paired = a.length - 1;
  let i = 0;
  for (; i < paired; i += 2) {
    even += (a[i] ?? 0) * (b[i] ?? 0);
    odd += (a[i + 1] ?? 0) * (b[i + 1] ?? 0);
  }
  return i < a.length ? even + odd + (a[i] ?? 0) * (b[i] ?? 0) : even + odd;
}
