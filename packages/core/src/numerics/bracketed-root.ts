const MOST_STEPS = 200;

/**
 * A root of a continuous function between two places where it has opposite signs.
 *
 * Regula falsi with the Illinois weights, and a bisection whenever three steps have not halved the bracket.
 *
 * @param f - `f(low)` and `f(high)` must not have the same sign
 * @returns a place where f is 0 or changes sign, to 4 parts in 10¹⁶ of the larger end
 * @see Germund Dahlquist and Åke Björck, "Numerical Methods", 1974, §6.4 (Illinois method)
 */
export function bracketedRoot(
  f: (x: number) => number,
  [low, high]: readonly [low: number, high: number],
): number {
  let a = low;
  let b = high;
  let fa = f(a);
  let fb = f(b);
  if (fa === 0) return a;
  if (fb === 0) return b;
  let width = Math.abs(b - a);
  for (let step = 1; step <= MOST_STEPS; step++) {
    const middle =
      step % 4 === 0 && Math.abs(b - a) > width / 2 ? (a + b) / 2 : b - (fb * (b - a)) / (fb - fa);
    if (step % 4 === 0) width = Math.abs(b - a);
    const value = f(middle);
    if (value === 0) return middle;
    if (value < 0 !== fb < 0) {
      a = b;
      fa = fb;
    } else {
      fa /= 2;
    }
    b = middle;
    fb = value;
    if (Math.abs(b - a) <= 2 * Number.EPSILON * Math.max(Math.abs(a), Math.abs(b))) return b;
  }
  return b;
}
