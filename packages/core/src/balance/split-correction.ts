import { checkFinite, checkNotNegative } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import { onCircle } from './on-circle.js';
import type { Correction, SplitCorrection, SplitOptions, SplitPart } from './types.js';

/** rad; places nearer to each other than this are one place. */
const SAME = 1e-6;

/**
 * A correction laid on the two allowed places beside it: blades, screw holes, spokes.
 *
 * m₁ = m sin b / sin(a + b), m₂ = m sin a / sin(a + b), with a and b the angles from the correction to the places on
 * either side
 *
 * @param correction - mass in kg and angle in rad, as a balance gives it
 * @param options - `positions`, two or more angles in rad; `by` adding mass (default) or removing it
 * @returns what goes where, at the radius of the correction. Where no two places within half a turn of each other
 *   have the correction between them, the nearest takes what it can and `left` holds the rest
 * @throws RangeError for a mass below 0, a value that is not finite, or fewer than two different places
 * @remarks Of all ways to share a correction among given places this moves the least mass.
 * @example
 * const third = 2 * Math.PI / 3;
 * const { parts } = splitCorrection({ mass: 0.003, angle: third / 2 }, { positions: [0, third, 2 * third] });
 * parts.map(({ mass }) => mass * 1000) // → [3.000, 3.000]
 * parts.map(({ position }) => position) // → [0, 1]
 * @see derived: the sine rule in the triangle of the three masses times radius
 */
export function splitCorrection(
  { mass, angle }: Correction,
  { positions, by = 'adding' }: SplitOptions,
): SplitCorrection {
  checkNotNegative('splitCorrection: mass', mass);
  checkFinite('splitCorrection: angle', angle);
  positions.forEach((position, i) => {
    checkFinite(`splitCorrection: positions[${i}]`, position);
  });
  const target = by === 'adding' ? angle : angle + Math.PI;
  const ahead = nearest(positions, { target, turn: -1 });
  const behind = nearest(positions, { target, turn: 1 });
  if (ahead === undefined || behind === undefined || positions.every((p) => same(p, positions[0] ?? NaN))) {
    throw refusal('splitCorrection: positions', 'two different places or more', positions);
  }
  const done = { mass: 0, angle: onCircle(angle) };
  const part = ({ position }: Place, share: number): SplitPart => ({
    position,
    angle: onCircle(positions[position] ?? 0),
    mass: share,
  });
  if (ahead.apart < SAME || mass === 0) return { parts: [part(ahead, mass)], left: done };
  if (behind.apart < SAME) return { parts: [part(behind, mass)], left: done };
  const between = ahead.apart + behind.apart;
  if (between < Math.PI - SAME) {
    const scale = mass / Math.sin(between);
    return {
      parts: [part(behind, scale * Math.sin(ahead.apart)), part(ahead, scale * Math.sin(behind.apart))],
      left: done,
    };
  }
  return nearestAlone(ahead.apart <= behind.apart ? ahead : behind, { mass, angle, part });
}

interface Place {
  readonly position: number;
  /** rad from the correction, one way round. */
  readonly apart: number;
  /** Way round, from the place to the correction. */
  readonly turn: 1 | -1;
}

function nearest(
  positions: readonly number[],
  { target, turn }: { readonly target: number; readonly turn: 1 | -1 },
): Place | undefined {
  return positions
    .map((place, position): Place => {
      const apart = onCircle(turn * (target - place));
      return { position, turn, apart: 2 * Math.PI - apart < SAME ? 0 : apart };
    })
    .sort((a, b) => a.apart - b.apart)[0];
}

function same(a: number, b: number): boolean {
  const apart = onCircle(a - b);
  return Math.min(apart, 2 * Math.PI - apart) < SAME;
}

/** The part of the correction that points at the place goes there; what is square to it is left. */
function nearestAlone(
  place: Place,
  { mass, angle, part }: Correction & { readonly part: (place: Place, share: number) => SplitPart },
): SplitCorrection {
  const share = mass * Math.max(0, Math.cos(place.apart));
  if (share <= mass * SAME) return { parts: [], left: { mass, angle: onCircle(angle) } };
  const away = place.turn * (Math.PI / 2 - place.apart);
  return {
    parts: [part(place, share)],
    left: { mass: mass * Math.sin(place.apart), angle: onCircle(angle + away) },
  };
}
