import type { Vector3 } from '../numerics/vector.js';
import type { Axis } from './geometry-types.js';
import { cross, inner, minus, norm, plus, times } from './space.js';

/** Sine of the angle between two axes below which they count as parallel. */
const PARALLEL = 1e-9;

/**
 * Where two axes come nearest to each other.
 *
 * With w from a point of the first to one of the second and n = u × v: s = (w × v)·n / n², t = (w × u)·n / n², and the
 * gap is |w·n| / |n|; of parallel axes it is |w × u|.
 *
 * @param first - through a point along a unit vector u
 * @param second - through a point along a unit vector v
 * @returns `gap` in m, and `centre` midway between the nearest points, absent where the axes are parallel
 */
export function nearestPoints(
  first: Axis,
  second: Axis,
): { readonly gap: number; readonly centre?: Vector3 } {
  const across = minus(second.point, first.point);
  const normal = cross(first.direction, second.direction);
  const sine = norm(normal);
  if (sine < PARALLEL) return { gap: norm(cross(across, first.direction)) };
  const s = inner(cross(across, second.direction), normal) / sine ** 2;
  const t = inner(cross(across, first.direction), normal) / sine ** 2;
  const onFirst = plus(first.point, times(first.direction, s));
  const onSecond = plus(second.point, times(second.direction, t));
  return { gap: Math.abs(inner(across, normal)) / sine, centre: times(plus(onFirst, onSecond), 0.5) };
}
