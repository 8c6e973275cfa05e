import type { Estimate } from './geometry-types.js';

/** Values with the most that each may be off either way. */
export interface Box {
  readonly values: readonly number[];
  readonly tolerances: readonly number[];
}

/** Corners of more dimensions than this are not all visited. */
const MOST_CORNERS = 12;
const GOLDEN = (Math.sqrt(5) - 1) / 2;
const SWEEPS = 3;
/** Share of a tolerance by which to look whether a score falls. */
const STEP = 1e-3;
/** Narrows the range of a value to a hundred-thousandth. */
const GOLDEN_STEPS = 24;

/**
 * How far tolerances reach derived figures.
 *
 * The likely reach of a figure f is √Σ Δᵢ², Δᵢ the larger of |f(x ± tᵢeᵢ) − f(x)|: the first-order law where f is straight,
 * and still right where it turns round, as an angle does at zero. The exact bounds are sought at every corner of the
 * box, and from the lowest and the highest of them by golden section along each value in turn, since a figure that
 * cannot be negative may have its least inside.
 *
 * @param figures - gives all figures at once, for any values in the box
 * @param box - nominal values and their tolerances
 * @returns one estimate for each figure
 */
export function spread(figures: (values: readonly number[]) => readonly number[], box: Box): Estimate[] {
  const { values, tolerances } = box;
  const nominal = figures(values);
  const loose = tolerances.flatMap((tolerance, i) => (tolerance > 0 ? [i] : []));
  const either = loose.map((i) => [figures(moved(box, i, -1)), figures(moved(box, i, 1))] as const);
  const places = corners(box, loose);
  const rows = places.map((place) => figures(place));
  return nominal.map((value, k) => {
    const reach = either.map(([low, high]) =>
      Math.max(Math.abs((low[k] ?? value) - value), Math.abs((high[k] ?? value) - value)),
    );
    const extreme = (sign: 1 | -1): number => {
      const scored = (place: readonly number[]): number => sign * (figures(place)[k] ?? value);
      const scores = rows.map((row) => sign * (row[k] ?? value));
      const start = places[scores.indexOf(Math.min(...scores))] ?? values;
      return sign * descend(scored, start, { box, loose });
    };
    const [least, greatest] = [extreme(1), extreme(-1)];
    return {
      value,
      tolerance: Math.hypot(...reach),
      least: Math.min(value, least),
      greatest: Math.max(value, greatest),
    };
  });
}

function moved({ values, tolerances }: Box, index: number, sign: 1 | -1): number[] {
  return values.map((value, i) => (i === index ? value + sign * (tolerances[i] ?? 0) : value));
}

function corners({ values, tolerances }: Box, loose: readonly number[]): number[][] {
  const turned = loose.slice(0, MOST_CORNERS);
  return Array.from({ length: 2 ** turned.length }, (_, bits) => {
    const corner = [...values];
    turned.forEach((i, place) => {
      const sign = (bits >> place) & 1 ? 1 : -1;
      corner[i] = (values[i] ?? 0) + sign * (tolerances[i] ?? 0);
    });
    return corner;
  });
}

/** The least score found by searching along one value after the other within the box. */
function descend(
  score: (place: readonly number[]) => number,
  start: readonly number[],
  { box, loose }: { readonly box: Box; readonly loose: readonly number[] },
): number {
  const place = [...start];
  let best = score(place);
  for (let sweep = 0; sweep < SWEEPS; sweep++) {
    const before = best;
    for (const i of loose) {
      const along = (value: number): number => score(place.map((old, j) => (j === i ? value : old)));
      for (const value of candidates(along, [box.values[i] ?? 0, box.tolerances[i] ?? 0], place[i] ?? 0)) {
        const found = along(value);
        if (found < best) [best, place[i]] = [found, value];
      }
    }
    if (!(best < before)) break;
  }
  return best;
}

/** Both ends of a range, and what lies between where the score falls off from where it stands. */
function candidates(
  along: (value: number) => number,
  [middle, tolerance]: readonly [number, number],
  from: number,
): number[] {
  const ends = [middle - tolerance, middle + tolerance];
  const step = STEP * tolerance;
  const here = along(from);
  const falls = along(from + (from > middle ? -step : step)) < here;
  return falls ? [...ends, golden(along, middle - tolerance, 2 * tolerance)] : ends;
}

function golden(value: (x: number) => number, from: number, width: number): number {
  let [low, high] = [from, from + width];
  for (let step = 0; step < GOLDEN_STEPS; step++) {
    const left = high - GOLDEN * (high - low);
    const right = low + GOLDEN * (high - low);
    if (value(left) < value(right)) high = right;
    else low = left;
  }
  return (low + high) / 2;
}
