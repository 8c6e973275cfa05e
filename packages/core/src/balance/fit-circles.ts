import { fitLeastSquares, type LeastSquaresFit } from '../numerics/fit-least-squares.js';
import { invertPositive } from '../numerics/invert-positive.js';
import type { TrialRun } from './types.js';

export interface CircleFit {
  /** Response to the unbalance as found, along angle 0 and a quarter turn on, unit of the amplitudes. */
  readonly response: readonly [number, number];
  /** Unit of the amplitudes for each kg. */
  readonly sensitivity: number;
  /** Of the amplitudes' misfit. */
  readonly sumOfSquares: number;
  /** Spare readings. */
  readonly degrees: number;
  /** Of (response, sensitivity) for amplitudes with unit standard error. */
  readonly covariance: readonly Float64Array[];
}

interface Runs {
  readonly initial: number;
  readonly trials: readonly TrialRun[];
}

/** Step of the derivatives, over the size of each unknown. */
const STEP = 1e-6;

/** Response and sensitivity that come nearest to all amplitudes. */
export function fitCircles(runs: Runs): CircleFit {
  const fits = starts(runs).map((start) => fitFrom(runs, start));
  const best = fits.reduce((a, b) => (b.sumOfSquares < a.sumOfSquares ? b : a));
  const { parameters, sumOfSquares, information } = best;
  const [x = 0, y = 0, slope = 0] = parameters;
  const trialMass = largestMass(runs);
  // Turning response and sensitivity by half a turn together leaves every amplitude as it is.
  const sign = slope < 0 ? -1 : 1;
  const scale = [sign, sign, sign / trialMass];
  const inverse = invertPositive(information);
  return {
    response: [sign * x, sign * y],
    sensitivity: Math.abs(slope) / trialMass,
    sumOfSquares,
    degrees: runs.trials.length + 1 - 3,
    covariance: inverse.map((row, i) => row.map((value, j) => value * (scale[i] ?? 0) * (scale[j] ?? 0))),
  };
}

/** The third unknown is the sensitivity times the largest trial mass, so that all three are amplitudes. */
function fitFrom({ initial, trials }: Runs, start: readonly number[]): LeastSquaresFit {
  const trialMass = largestMass({ initial, trials });
  const misfit = ([x = 0, y = 0, slope = 0]: Float64Array): number[] => [
    Math.hypot(x, y) - initial,
    ...trials.map(({ mass, angle, amplitude }) => {
      const effect = (slope * mass) / trialMass;
      return Math.hypot(x + effect * Math.cos(angle), y + effect * Math.sin(angle)) - amplitude;
    }),
  ];
  return fitLeastSquares(misfit, { start, steps: [STEP * initial, STEP * initial, STEP * initial] });
}

/**
 * Aᵢ² − A₀² = 2 mᵢ s (aₓ cos φᵢ + a_y sin φᵢ) + mᵢ² s² is linear in s aₓ, s a_y and s²: solved with s² as it comes out, and
 * once more with s = |s a| / A₀ for readings that would make s² negative or far off.
 */
function starts({ initial, trials }: Runs): number[][] {
  const trialMass = largestMass({ initial, trials });
  const rows = trials.map(({ mass, angle, amplitude }) => {
    const share = mass / trialMass;
    return {
      of: [2 * share * Math.cos(angle), 2 * share * Math.sin(angle), share ** 2] as const,
      is: amplitude ** 2 - initial ** 2,
    };
  });
  const normal = [0, 1, 2].map((i) =>
    [0, 1, 2].map((j) => rows.reduce((sum, { of }) => sum + (of[i] ?? 0) * (of[j] ?? 0), 0)),
  );
  const right = [0, 1, 2].map((i) => rows.reduce((sum, { of, is }) => sum + (of[i] ?? 0) * is, 0));
  const inverse = invertPositive(normal);
  const [x = 0, y = 0, square = 0] = inverse.map((row) =>
    row.reduce((sum, value, j) => sum + value * (right[j] ?? 0), 0),
  );
  const harmonic = Math.max(Math.hypot(x, y) / initial, 0.01 * initial);
  const linear = square > 0 ? Math.sqrt(square) : harmonic;
  const direction = Math.atan2(y, x);
  return [linear, harmonic].map((slope) => [
    initial * Math.cos(direction),
    initial * Math.sin(direction),
    slope,
  ]);
}

function largestMass({ trials }: Runs): number {
  return Math.max(...trials.map(({ mass }) => mass));
}
