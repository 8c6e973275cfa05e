// eslint-disable-next-line @typescript-eslint/triple-slash-reference
/// <reference path="./ml-regression-growth.d.ts" />
import { SimpleLinearRegression } from 'ml-regression';
import type { OrderGrowth } from './trials-types.js';

/** One amplitude of an order at a speed. */
export interface GrowthPoint {
  /** rad/s */
  readonly speed: number;
  readonly amplitude: number;
  readonly amplitudeError: number;
}

/** What the same trial, run twice, differs by: where the phone lies, how the model stands. Our judgement. */
const REPEATABILITY = 0.06;
/** ln of the least span of speeds that a slope can be read from. */
const LEAST_SPAN = Math.log(1.08);

/**
 * Slope of log amplitude on log speed, with its standard error; undefined where the speeds span too little.
 *
 * s = Σ (x − x̄)(y − ȳ) / Σ (x − x̄)², SE² = max(Σ r² / (n − 2), mean σ²) / Σ (x − x̄)²
 */
export function orderGrowth(order: number, points: readonly GrowthPoint[]): OrderGrowth | undefined {
  const kept = points.filter(({ amplitude }) => amplitude > 0).sort((a, b) => a.speed - b.speed);
  const x = kept.map(({ speed }) => Math.log(speed));
  const y = kept.map(({ amplitude }) => Math.log(amplitude));
  if ((x.at(-1) ?? 0) - (x[0] ?? 0) < LEAST_SPAN) return undefined;
  const fit = new SimpleLinearRegression(x, y);
  const mean = x.reduce((sum, one) => sum + one, 0) / x.length;
  const spread = x.reduce((sum, one) => sum + (one - mean) ** 2, 0);
  const measured = kept.reduce((sum, point) => sum + errorOf(point) ** 2, 0) / kept.length;
  const left = y.reduce((sum, one, i) => sum + (one - fit.predict(x[i] ?? 0)) ** 2, 0);
  const scatter = kept.length > 2 ? left / (kept.length - 2) : 0;
  return {
    order,
    slope: fit.slope,
    standardError: Math.sqrt(Math.max(scatter, measured) / spread),
    speeds: Float64Array.from(kept, ({ speed }) => speed),
    amplitudes: Float64Array.from(kept, ({ amplitude }) => amplitude),
    hump: kept.some((point, i) => standsOut(point, kept[i - 1], kept[i + 1])),
  };
}

function errorOf({ amplitude, amplitudeError }: GrowthPoint): number {
  return Math.hypot(amplitudeError / amplitude, REPEATABILITY);
}

/** Whether a point stands above both neighbours by three standard errors of the difference. */
function standsOut(
  point: GrowthPoint,
  before: GrowthPoint | undefined,
  after: GrowthPoint | undefined,
): boolean {
  return [before, after].every(
    (beside) =>
      beside !== undefined &&
      Math.log(point.amplitude / beside.amplitude) > 3 * Math.hypot(errorOf(point), errorOf(beside)),
  );
}
