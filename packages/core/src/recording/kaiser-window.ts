/** Steps in which the window is tabulated over half its length. */
const STEPS = 4096;

/**
 * Kaiser's window, tabulated: w(x) = I₀(β √(1 − x²)) / I₀(β) for |x| ≤ 1.
 *
 * @param beta - β, the window's shape
 * @returns the window as a function, 0 outside; between the table's points by a parabola, within 1e-11
 * @see J. F. Kaiser, "Nonrecursive digital filter design using the I0-sinh window function", Proc. IEEE ISCAS 1974
 */
export function kaiserWindow(beta: number): (x: number) => number {
  // Tabulated over x², in which the window is smooth even at its ends.
  const table = Float64Array.from(
    { length: STEPS + 3 },
    (_, i) => besselI0(beta * Math.sqrt(Math.max(0, 1 - i / STEPS))) / besselI0(beta),
  );
  return (x) => {
    const place = x * x * STEPS;
    if (place > STEPS) return 0;
    const below = Math.min(Math.floor(place), STEPS - 2);
    const part = place - below;
    const a = table[below] ?? 0;
    const b = table[below + 1] ?? 0;
    const c = table[below + 2] ?? 0;
    return a + part * (b - a) + 0.5 * part * (part - 1) * (c - 2 * b + a);
  };
}

/** Modified Bessel function of the first kind and order 0 by its power series. */
function besselI0(x: number): number {
  let term = 1;
  let sum = 1;
  for (let k = 1; term > 1e-17 * sum; k++) {
    term *= (x / (2 * k)) ** 2;
    sum += term;
  }
  return sum;
}
