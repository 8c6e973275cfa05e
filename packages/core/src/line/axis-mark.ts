import { refusal } from '../internal/refuse.js';
import type { Axis, AxisMark, Surface } from './geometry-types.js';
import { cross, inner, minus, norm, plus, times, unit } from './space.js';
import { surfaceNormal } from './surface-normal.js';

/** Cosine of the incidence below which an axis counts as running along the surface. */
const ALONG = 1e-9;

/**
 * Where an axis goes through a bulkhead, a hull station or any flat surface: the centre mark to drill at.
 *
 * point = p + u ((q − p)·n) / (u·n), with the axis through p along u and the surface through q with the normal n
 *
 * @param axis - `point` in m and `direction` of any length, as an axis of `lineAxes` has them
 * @param surface - a point of it in m and its normal, or its rises in rad in side view and section. A bulkhead or
 *   station at x stands through [x, 0, 0] with the normal [1, 0, 0]
 * @returns the point in m, apart also as height, offset and station, and the incidence in rad
 * @throws RangeError where the axis runs along the surface or a direction is none
 * @example
 * const tube = { point: [0.14, 0, 0.03], direction: [300, 0, -75] };
 * const bulkhead = { through: [0.2, 0, 0], normal: [1, 0, 0] };
 * axisMark(tube, bulkhead).height // → 0.015
 */
export function axisMark(axis: Axis, surface: Surface): AxisMark {
  const normal = surfaceNormal('axisMark: surface', surface);
  const length = norm(axis.direction);
  if (!(length > 0 && Number.isFinite(length)))
    throw refusal('axisMark: axis.direction', 'three finite numbers, not all zero', axis.direction);
  const direction = unit(axis.direction);
  const cosine = inner(direction, normal);
  if (!(Math.abs(cosine) > ALONG))
    throw refusal('axisMark: axis', 'one that goes through the surface, not along it', cosine);
  const reach = inner(minus(surface.through, axis.point), normal) / cosine;
  const point = plus(axis.point, times(direction, reach));
  if (!point.every(Number.isFinite))
    throw refusal('axisMark: axis.point', 'three finite numbers, as the surface', axis.point);
  const incidence = Math.atan2(norm(cross(direction, normal)), Math.abs(cosine));
  return { point, at: point[0], offset: point[1], height: point[2], incidence };
}
