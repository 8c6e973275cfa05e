import { invertPositive } from './invert-positive.js';
import { NotPositiveDefiniteError } from './not-positive-definite-error.js';

export interface LeastSquaresTask {
  /** Where to begin; inside the bounds. */
  readonly start: ArrayLike<number>;
  /** Steps by which the derivatives are taken, one for each parameter. */
  readonly steps: ArrayLike<number>;
  /** Lowest and highest value of each parameter. Default none. */
  readonly bounds?: readonly (readonly [number, number])[];
}

export interface LeastSquaresFit {
  readonly parameters: Float64Array;
  readonly residuals: Float64Array;
  /** Sum of the squared residuals. */
  readonly sumOfSquares: number;
  /** JᵀJ at the end, row by row. */
  readonly information: readonly Float64Array[];
  /** Row i holds ∂residual i / ∂parameters. */
  readonly jacobian: readonly Float64Array[];
}

const MOST_ROUNDS = 60;
const MOST_TRIES = 12;
/** A round that gains less than this share of the sum is the last. */
const GAIN = 1e-13;

interface Point {
  readonly parameters: Float64Array;
  readonly residuals: Float64Array;
  readonly sumOfSquares: number;
}

/**
 * Parameters that make the sum of squared residuals least, by damped Gauss–Newton steps kept inside bounds.
 *
 * (JᵀJ + μ diag JᵀJ) δ = −Jᵀr over the parameters that are not pressed against a bound; J by central differences
 *
 * @param residuals - of parameters; one more or as many of them as parameters, smooth over a step
 * @see Jorge Moré, "The Levenberg–Marquardt algorithm", Lecture Notes in Mathematics 630, 1978
 */
export function fitLeastSquares(
  residuals: (parameters: Float64Array) => ArrayLike<number>,
  task: LeastSquaresTask,
): LeastSquaresFit {
  const at = (parameters: Float64Array): Point => {
    const values = Float64Array.from(residuals(parameters));
    return { parameters, residuals: values, sumOfSquares: values.reduce((sum, r) => sum + r * r, 0) };
  };
  let point = at(Float64Array.from(task.start));
  let damping = 1e-3;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const jacobian = slopes(residuals, point, task);
    const next = improve(point, jacobian, { at, task, damping });
    if (next === undefined) break;
    const gain = point.sumOfSquares - next.point.sumOfSquares;
    const done = gain <= GAIN * point.sumOfSquares;
    ({ point, damping } = next);
    if (done) break;
  }
  const jacobian = slopes(residuals, point, task);
  return { ...point, jacobian, information: normalMatrix(jacobian) };
}

/** A better point, with ever shorter steps until one is found; undefined where there is none. */
function improve(
  point: Point,
  jacobian: readonly Float64Array[],
  { at, task, damping: first }: { at: (p: Float64Array) => Point; task: LeastSquaresTask; damping: number },
): { readonly point: Point; readonly damping: number } | undefined {
  let damping = first;
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    const next = at(clamped(stepped(point, jacobian, { task, damping }), task));
    if (next.sumOfSquares < point.sumOfSquares)
      return { point: next, damping: Math.max(damping / 10, 1e-12) };
    damping *= 8;
  }
  return undefined;
}

function stepped(
  { parameters, residuals }: Point,
  jacobian: readonly Float64Array[],
  { task, damping }: { task: LeastSquaresTask; damping: number },
): Float64Array {
  const gradient = parameters.map((_, j) =>
    jacobian.reduce((sum, row, i) => sum + (row[j] ?? 0) * (residuals[i] ?? 0), 0),
  );
  const free = Array.from(parameters.keys()).filter((j) => {
    const [low, high] = task.bounds?.[j] ?? [-Infinity, Infinity];
    const [value, slope] = [parameters[j] ?? 0, gradient[j] ?? 0];
    return !((value <= low && slope > 0) || (value >= high && slope < 0));
  });
  const normal = normalMatrix(jacobian);
  const largest = Math.max(...normal.map((row, j) => row[j] ?? 0), Number.MIN_VALUE);
  const damped = free.map((j) =>
    free.map((k) => {
      const entry = normal[j]?.[k] ?? 0;
      return j === k ? entry * (1 + damping) + 1e-14 * largest : entry;
    }),
  );
  const inverse = invertOrNothing(damped);
  const next = parameters.slice();
  free.forEach((j, row) => {
    const change = free.reduce(
      (sum, k, column) => sum + (inverse?.[row]?.[column] ?? 0) * (gradient[k] ?? 0),
      0,
    );
    next[j] = (next[j] ?? 0) - change;
  });
  return next;
}

/** Undefined where rounding has made the matrix singular: the step is then none, and the damping grows. */
function invertOrNothing(matrix: readonly (readonly number[])[]): Float64Array[] | undefined {
  try {
    return invertPositive(matrix);
  } catch (error) {
    if (error instanceof NotPositiveDefiniteError) return undefined;
    throw error;
  }
}

function clamped(parameters: Float64Array, { bounds }: LeastSquaresTask): Float64Array {
  if (bounds === undefined) return parameters;
  return parameters.map((value, j) => {
    const [low, high] = bounds[j] ?? [-Infinity, Infinity];
    return Math.min(high, Math.max(low, value));
  });
}

function slopes(
  residuals: (parameters: Float64Array) => ArrayLike<number>,
  { parameters, residuals: here }: Point,
  { steps }: LeastSquaresTask,
): Float64Array[] {
  const columns = Array.from(parameters.keys()).map((j) => {
    const step = steps[j] ?? 0;
    const moved = (by: number): ArrayLike<number> =>
      residuals(parameters.map((value, k) => (k === j ? value + by : value)));
    const [above, below] = [moved(step), moved(-step)];
    return here.map((_, i) => ((above[i] ?? 0) - (below[i] ?? 0)) / (2 * step));
  });
  return Array.from(here, (_, i) => Float64Array.from(columns, (column) => column[i] ?? 0));
}

function normalMatrix(jacobian: readonly Float64Array[]): Float64Array[] {
  const size = jacobian[0]?.length ?? 0;
  return Array.from({ length: size }, (_, j) =>
    Float64Array.from({ length: size }, (__, k) =>
      jacobian.reduce((sum, row) => sum + (row[j] ?? 0) * (row[k] ?? 0), 0),
    ),
  );
}
