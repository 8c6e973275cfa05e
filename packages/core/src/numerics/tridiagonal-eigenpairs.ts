import { NoConvergenceError } from './no-convergence-error.js';
import type { Eigenpairs } from './types.js';

const MOST_SWEEPS = 60;
/** Couplings below this share of the largest entry are nothing, whatever stands beside them; their squares would underflow. */
const NEGLIGIBLE = Number.EPSILON ** 3;

/**
 * All eigenvalues and vectors of a symmetric tridiagonal matrix, in no particular order.
 *
 * @param diagonal - length n
 * @param offDiagonal - length n − 1 or more; entry i couples rows i and i + 1
 * @param options - `from`: the vectors are given from this component on, and cost that much less. Default 0.
 * @throws NoConvergenceError if an eigenvalue takes more than 60 sweeps
 * @see J. H. Wilkinson and C. Reinsch, "Handbook for Automatic Computation II: Linear Algebra", 1971, II/3 (tql2)
 */
export function tridiagonalEigenpairs(
  diagonal: ArrayLike<number>,
  offDiagonal: ArrayLike<number>,
  { from = 0 }: { readonly from?: number } = {},
): Eigenpairs {
  const size = diagonal.length;
  const d = Float64Array.from(diagonal);
  const e = new Float64Array(size);
  for (let i = 0; i + 1 < size; i++) e[i] = offDiagonal[i] ?? 0;
  const vectors = Array.from({ length: size }, (_, i) => {
    const unit = new Float64Array(size - from);
    if (i >= from) unit[i - from] = 1;
    return unit;
  });
  const floor = NEGLIGIBLE * Math.max(largest(d), largest(e));
  for (let start = 0; start < size; start++) {
    for (let sweep = 0; ; sweep++) {
      const end = splitAfter(d, e, { start, floor });
      if (end === start) break;
      if (sweep === MOST_SWEEPS)
        throw new NoConvergenceError('tridiagonalEigenpairs: no convergence in 60 sweeps');
      implicitSweep({ d, e, vectors, start, end });
    }
  }
  return { values: d, vectors };
}

function largest(values: Float64Array): number {
  let most = 0;
  for (const value of values) most = Math.max(most, Math.abs(value));
  return most;
}

/** First row at or after `start` whose coupling to the next is rounding. */
function splitAfter(
  d: Float64Array,
  e: Float64Array,
  { start, floor }: { readonly start: number; readonly floor: number },
): number {
  let end = start;
  while (end + 1 < d.length) {
    const size = Math.abs(d[end] ?? 0) + Math.abs(d[end + 1] ?? 0);
    if (Math.abs(e[end] ?? 0) <= Math.max(Number.EPSILON * size, floor)) break;
    end += 1;
  }
  return end;
}

interface Sweep {
  readonly d: Float64Array;
  readonly e: Float64Array;
  readonly vectors: readonly Float64Array[];
  readonly start: number;
  readonly end: number;
}

/** One QL step with Wilkinson's shift on rows `start` to `end`. */
function implicitSweep({ d, e, vectors, start, end }: Sweep): void {
  const coupling = e[start] ?? 0;
  const half = ((d[start + 1] ?? 0) - (d[start] ?? 0)) / (2 * coupling);
  const root = Math.sqrt(half * half + 1);
  let g = (d[end] ?? 0) - (d[start] ?? 0) + coupling / (half + (half >= 0 ? root : -root));
  let sine = 1;
  let cosine = 1;
  let shift = 0;
  for (let i = end - 1; i >= start; i--) {
    const f = sine * (e[i] ?? 0);
    const b = cosine * (e[i] ?? 0);
    const r = Math.sqrt(f * f + g * g);
    e[i + 1] = r;
    if (r === 0) {
      d[i + 1] = (d[i + 1] ?? 0) - shift;
      e[end] = 0;
      return;
    }
    sine = f / r;
    cosine = g / r;
    g = (d[i + 1] ?? 0) - shift;
    const t = ((d[i] ?? 0) - g) * sine + 2 * cosine * b;
    shift = sine * t;
    d[i + 1] = g + shift;
    g = cosine * t - b;
    rotate(vectors[i], vectors[i + 1], [cosine, sine]);
  }
  d[start] = (d[start] ?? 0) - shift;
  e[start] = g;
  e[end] = 0;
}

function rotate(
  low: Float64Array | undefined,
  high: Float64Array | undefined,
  turn: readonly [number, number],
): void {
  if (!low || !high) return;
  const [cosine, sine] = turn;
  for (let k = 0; k < low.length; k++) {
    const x = low[k] ?? 0;
    const y = high[k] ?? 0;
    high[k] = sine * x + cosine * y;
    low[k] = cosine * x - sine * y;
  }
}
