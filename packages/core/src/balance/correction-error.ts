/** The unbalance as a mass at the trial radius, kg in two directions square to each other, with its covariance, kg². */
export interface UnbalanceEstimate {
  readonly x: number;
  readonly y: number;
  /** Variance of x, covariance, variance of y. */
  readonly covariance: readonly [xx: number, xy: number, yy: number];
}

/**
 * Standard errors of the size and the direction of a vector, first order in its covariance.
 *
 * @returns of the size in its unit, and of the angle in rad, at most π: beyond that the direction is unknown
 */
export function correctionError({ x, y, covariance: [xx, xy, yy] }: UnbalanceEstimate): {
  readonly massError: number;
  readonly angleError: number;
} {
  const size = Math.hypot(x, y);
  const spread = Math.sqrt(Math.max(xx, yy));
  if (size === 0) return { massError: spread, angleError: spread === 0 ? 0 : Math.PI };
  const [c, s] = [x / size, y / size];
  const along = c * c * xx + 2 * c * s * xy + s * s * yy;
  const across = s * s * xx - 2 * c * s * xy + c * c * yy;
  return {
    massError: Math.sqrt(Math.max(along, 0)),
    angleError: Math.min(Math.sqrt(Math.max(across, 0)) / size, Math.PI),
  };
}
