/** A straight line through points, and how far they stand from it. */
export interface Line {
  readonly slope: number;
  readonly intercept: number;
  /** Root mean square distance of the points from the line, outliers among them. */
  readonly deviation: number;
}

/**
 * Fits a line by least squares, twice over: the second time without the points that stand far out.
 *
 * @param x - abscissae
 * @param y - ordinates, as many
 */
export function fitLine(x: ArrayLike<number>, y: ArrayLike<number>): Line {
  const first = leastSquares({ x, y, line: { slope: 0, intercept: 0, deviation: Infinity } });
  return leastSquares({ x, y, line: first });
}

/** Least squares over the points within three deviations of `line`; sums are taken about the middle to keep their digits. */
function leastSquares({ x, y, line }: { x: ArrayLike<number>; y: ArrayLike<number>; line: Line }): Line {
  const n = x.length;
  const x0 = x[n >> 1] ?? 0;
  const y0 = y[n >> 1] ?? 0;
  const limit = 3 * line.deviation;
  const total = { n: 0, x: 0, y: 0, xx: 0, xy: 0 };
  for (let i = 0; i < n; i++) {
    const u = (x[i] ?? 0) - x0;
    const v = (y[i] ?? 0) - y0;
    if (Math.abs((y[i] ?? 0) - line.intercept - line.slope * (x[i] ?? 0)) > limit) continue;
    total.n++;
    total.x += u;
    total.y += v;
    total.xx += u * u;
    total.xy += u * v;
  }
  const spread = total.xx - (total.x * total.x) / total.n;
  const slope = spread > 0 ? (total.xy - (total.x * total.y) / total.n) / spread : 0;
  const intercept = y0 + (total.y - slope * total.x) / total.n - slope * x0;
  let squares = 0;
  for (let i = 0; i < n; i++) squares += ((y[i] ?? 0) - intercept - slope * (x[i] ?? 0)) ** 2;
  return { slope, intercept, deviation: Math.sqrt(squares / n) };
}
