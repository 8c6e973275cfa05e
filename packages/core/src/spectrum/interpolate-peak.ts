import { magnitudeError } from './magnitude-error.js';
import type { WindowName } from './types.js';

export interface InterpolationOptions {
  readonly window: WindowName;
  /** Cosine coefficients of that window. */
  readonly coefficients: readonly number[];
  /** Mean square of the noise on a line, and how many independent segments averaged it. */
  readonly noise: number;
  readonly averages: number;
}

/**
 * Where between the lines a sine lies, from the magnitudes of the highest line and its two neighbours.
 *
 * Hann: 2 (c − a) / (a + 2b + c), which is exact; rectangular: c / (b + c) with the higher neighbour, exact; others: the
 * vertex of the parabola through the three logarithms; flat-top: on the line.
 *
 * @param magnitudes - below, at, and above the highest line
 * @returns `offset` in lines, −½ … ½, and its standard error
 */
export function interpolatePeak(
  magnitudes: readonly number[],
  options: InterpolationOptions,
): { offset: number; error: number } {
  const { window } = options;
  // Uniform over one line.
  if (window === 'flat-top') return { offset: 0, error: 1 / Math.sqrt(12) };
  const offsetOf = window === 'hann' ? hannOffset : window === 'rectangular' ? pairOffset : parabolaOffset;
  const error = Math.hypot(propagated(offsetOf, magnitudes, options), PARABOLA_BIAS[window] ?? 0);
  return { offset: offsetOf(magnitudes), error: Math.min(error, 1 / Math.sqrt(12)) };
}

/** Lines by which the parabola errs at worst, without noise; computed from the windows' transforms. */
const PARABOLA_BIAS: Partial<Record<WindowName, number>> = {
  hamming: 0.016,
  blackman: 0.0066,
  'blackman-harris': 0.0032,
};

/** From the transform of the Hann window, sinc x / (1 − x²). */
function hannOffset([below = 0, at = 0, above = 0]: readonly number[]): number {
  return (2 * (above - below)) / (below + 2 * at + above);
}

function pairOffset([below = 0, at = 0, above = 0]: readonly number[]): number {
  return above >= below ? above / (at + above) : -below / (at + below);
}

function parabolaOffset([below = 0, at = 0, above = 0]: readonly number[]): number {
  if (below <= 0 || above <= 0) return 0;
  const left = Math.log(below / at);
  const right = Math.log(above / at);
  const offset = (0.5 * (left - right)) / (left + right);
  return Number.isFinite(offset) ? Math.max(-0.5, Math.min(0.5, offset)) : 0;
}

/** First-order propagation of the noise of the three lines, which the window makes correlated. */
function propagated(
  offsetOf: (magnitudes: readonly number[]) => number,
  magnitudes: readonly number[],
  { coefficients, noise, averages }: InterpolationOptions,
): number {
  const step = 1e-5 * (magnitudes[1] ?? 1);
  const moves = magnitudes.map((_, i) => {
    const moved = (by: number) => offsetOf(magnitudes.map((value, j) => (i === j ? value + by : value)));
    return (
      ((moved(step) - moved(-step)) / (2 * step)) * magnitudeError(magnitudes[i] ?? 0, { noise, averages })
    );
  });
  const correlation = lineCorrelation(coefficients);
  let variance = 0;
  moves.forEach((a, i) => {
    moves.forEach((b, j) => {
      variance += a * b * (correlation[Math.abs(i - j)] ?? 0);
    });
  });
  return Math.sqrt(Math.max(variance, 0));
}

/** Correlation of the noise on lines 0, 1 and 2 apart: Fourier coefficients of the squared window over the zeroth. */
function lineCorrelation(coefficients: readonly number[]): number[] {
  const last = coefficients.length - 1;
  // Two-sided coefficients of the window: a₀ in the middle, half of each other on both sides.
  const two = Array.from({ length: 2 * last + 1 }, (_, i) => {
    const a = coefficients[Math.abs(i - last)] ?? 0;
    return i === last ? a : a / 2;
  });
  const lag = (by: number) => two.reduce((sum, a, i) => sum + a * (two[i + by] ?? 0), 0);
  return [1, lag(1) / lag(0), lag(2) / lag(0)];
}
