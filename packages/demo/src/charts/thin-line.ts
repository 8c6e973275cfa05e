/** A point of a drawn line, in pixels. */
export type Point = readonly [x: number, y: number];

/**
 * Thins a line to at most four points a pixel column, its first, lowest, highest and last, so that no peak is lost.
 *
 * @param count - how many points the line has
 * @param at - the point of an index, with x never falling
 * @returns the points to draw, in order
 */
export function thinLine(count: number, at: (index: number) => Point): Point[] {
  const kept: Point[] = [];
  let column: Point[] = [];
  for (let index = 0; index < count; index++) {
    const point = at(index);
    const [first] = column;
    if (first && Math.floor(first[0]) !== Math.floor(point[0])) {
      kept.push(...extremes(column));
      column = [];
    }
    column.push(point);
  }
  kept.push(...extremes(column));
  return kept;
}

function extremes(column: readonly Point[]): Point[] {
  if (column.length <= 4) return [...column];
  let lowest = 0;
  let highest = 0;
  column.forEach((point, index) => {
    if (point[1] < (column[lowest]?.[1] ?? 0)) lowest = index;
    if (point[1] > (column[highest]?.[1] ?? 0)) highest = index;
  });
  const indices = [...new Set([0, lowest, highest, column.length - 1])].sort((a, b) => a - b);
  return indices.flatMap((index) => column.slice(index, index + 1));
}
