import { checkPositive } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';

/** A hull under way. */
export interface HullRun {
  /** m/s */
  readonly hullSpeed: number;
  /** m, advance in one turn without slip. */
  readonly pitch: number;
  /** Share of the pitch that is lost, from 0 up to but not including 1. */
  readonly slip: number;
}

/**
 * The shaft speed that drives a hull at a speed.
 *
 * n = v / (p (1 − s)), ω = 2πn
 *
 * @param run - hull speed in m/s, pitch in m, slip as a share
 * @returns rad/s
 * @throws RangeError where a figure is out of its domain
 * @remarks Apparent slip, counted from the hull's speed and not from that of the water in its wake; 0.2 to 0.5 is usual for
 *   displacement models (common practice, no source).
 * @example
 * const knot = 1852 / 3600;
 * const speed = speedFromHull({ hullSpeed: 10 * knot, pitch: 3.8, slip: 0.06634 });
 * (speed * 30) / Math.PI // → 87.00
 * @see any text on ship propulsion; the figures above from https://www.funnel2tunnel.com/answers/what-is-slip/
 */
export function speedFromHull({ hullSpeed, pitch, slip }: HullRun): number {
  checkPositive('speedFromHull: hullSpeed', hullSpeed);
  checkPositive('speedFromHull: pitch', pitch);
  if (!(slip >= 0 && slip < 1))
    throw refusal('speedFromHull: slip', 'a share from 0 up to but not including 1', slip);
  return (2 * Math.PI * hullSpeed) / (pitch * (1 - slip));
}
