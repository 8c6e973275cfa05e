import { checkPositive } from '../internal/checks.js';
import { axisMark } from './axis-mark.js';
import type { Axis, ExitEllipse, Surface } from './geometry-types.js';
import type { Vector3 } from '../numerics/vector.js';
import { cross, inner, minus, norm, plus, times, unit } from './space.js';
import { surfaceNormal } from './surface-normal.js';

/** Sine of the incidence below which the hole is round and has no length. */
const SQUARE_ON = 1e-9;

/**
 * The hole that a round tube leaves in a sloping surface: an ellipse whose width is the tube's.
 *
 * b = d/2, a = b / cos i, along the projection of the axis on the surface; its area times cos i is the tube's section.
 *
 * @param axis - of the tube: `point` in m and `direction` of any length
 * @param options - `diameter` of the tube in m, greater than 0; `surface`, flat, as for {@link axisMark}
 * @returns centre, semi-axes in m, directions of both in the surface, area in m², and the four ends to mark
 * @throws RangeError where the diameter is not greater than 0, or the axis runs along the surface
 * @remarks A curved hull is taken as the flat that touches it where the axis leaves: exact as long as the hull is flat
 *   over the length of the hole.
 * @example
 * const axis = { point: [0, 0, 0], direction: [1, 0, 0] };
 * const bottom = { through: [0.1, 0, 0], riseAft: Math.PI / 6, riseToPort: 0 };
 * const hole = exitEllipse(axis, { diameter: 0.008, surface: bottom });
 * hole.semiMajor // → 0.008
 * hole.semiMinor // → 0.004
 * hole.majorDirection // → [0.866025, 0.000000, 0.500000]
 */
export function exitEllipse(
  axis: Axis,
  { diameter, surface }: { readonly diameter: number; readonly surface: Surface },
): ExitEllipse {
  checkPositive('exitEllipse: diameter', diameter);
  const mark = axisMark(axis, surface);
  const normal = surfaceNormal('exitEllipse: surface', surface);
  const major = majorDirection(unit(axis.direction), normal);
  const minor = cross(normal, major);
  const semiMinor = diameter / 2;
  const semiMajor = semiMinor / Math.cos(mark.incidence);
  const end = (direction: Vector3, reach: number): Vector3 => plus(mark.point, times(direction, reach));
  return {
    ...mark,
    semiMajor,
    semiMinor,
    majorDirection: major,
    minorDirection: minor,
    area: Math.PI * semiMajor * semiMinor,
    ends: [end(major, -semiMajor), end(major, semiMajor), end(minor, -semiMinor), end(minor, semiMinor)],
  };
}

/** The projection of the axis on the surface; where it has none, of the keel or of the upright. */
function majorDirection(direction: Vector3, normal: Vector3): Vector3 {
  const candidates: readonly Vector3[] = [direction, [1, 0, 0], [0, 0, 1]];
  const projections = candidates.map((vector) => minus(vector, times(normal, inner(vector, normal))));
  const longest = projections.find((vector) => norm(vector) > SQUARE_ON) ?? [0, 0, 1];
  const [x, y, z] = unit(longest);
  const forward = [x, y, z].find((part) => Math.abs(part) > SQUARE_ON) ?? 1;
  return forward < 0 ? [-x, -y, -z] : [x, y, z];
}
