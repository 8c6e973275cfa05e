import { bisectLeft, line as lineShape, scaleLinear } from 'd3';
import { spread } from './spread.js';

/** A line of a figure over shaft speed. */
export interface SpeedLine {
  readonly name: string;
  /** Stands for the name where there is little room. */
  readonly short: string;
  readonly kind: 'forward' | 'backward' | 'order' | 'reach';
  /** Ascending. */
  readonly x: ArrayLike<number>;
  readonly y: ArrayLike<number>;
}

/** A place on a line that matters. */
export interface SpeedPoint {
  readonly x: number;
  readonly y: number;
  readonly name: string;
}

/** A speed that matters. */
export interface SpeedMark {
  readonly x: number;
  readonly name: string;
  readonly kind: 'wanted' | 'limit';
}

export interface SpeedChartInput {
  readonly lines: readonly SpeedLine[];
  readonly points: readonly SpeedPoint[];
  readonly marks: readonly SpeedMark[];
  /** A level that nothing may pass, drawn as a wall. */
  readonly wall?: { readonly y: number; readonly name: string };
  /** The right end of the axis of speed, and the upper end of the other. */
  readonly top: number;
  readonly high: number;
}

export interface DrawnLine extends SpeedLine {
  readonly path: string;
  /** Where its name stands. */
  readonly label: {
    readonly x: number;
    readonly y: number;
    readonly text: string;
    readonly anchor: 'start' | 'end';
  };
}

export interface PointLabel {
  readonly x: number;
  readonly y: number;
  readonly anchor: 'start' | 'end';
}

export interface SpeedFigure {
  readonly left: number;
  readonly right: number;
  readonly base: number;
  readonly ceiling: number;
  readonly lines: readonly DrawnLine[];
  readonly points: readonly (SpeedPoint & {
    readonly px: number;
    readonly py: number;
    /** Where its name stands; undefined where every place for it is taken. */
    readonly label: PointLabel | undefined;
  })[];
  readonly marks: readonly (SpeedMark & { readonly px: number; readonly anchor: 'start' | 'end' })[];
  readonly wall: number | undefined;
  readonly xTicks: readonly { readonly x: number; readonly value: number }[];
  readonly yTicks: readonly { readonly y: number; readonly value: number }[];
  readonly share: (px: number) => number;
  readonly x: (speed: number) => number;
  readonly y: (value: number) => number;
}

const MARGIN = { left: 46, top: 26, bottom: 38 };
const LABEL = 15;

/**
 * Lays out a figure over shaft speed: lines named at their ends, places on them, and speeds that matter.
 *
 * @param input - all in the units shown
 * @param room - px
 */
export function layoutSpeedChart(
  { lines, points, marks, wall, top, high }: SpeedChartInput,
  { width, height }: { readonly width: number; readonly height: number },
): SpeedFigure {
  const wide = width > 560;
  const right = width - (wide ? 112 : 58);
  const base = height - MARGIN.bottom;
  const x = scaleLinear([0, top], [MARGIN.left, right]);
  const y = scaleLinear([0, high], [base, MARGIN.top]);
  const middle = (MARGIN.left + right) / 2;
  const side = (px: number): 'start' | 'end' => (px > middle ? 'end' : 'start');
  return {
    left: MARGIN.left,
    right,
    base,
    ceiling: MARGIN.top,
    lines: nameLines(
      lines.map((line) => drawLine(line, { x, y, high })),
      { right, base, wide },
    ),
    points: namePoints(
      points
        .filter((point) => point.x <= top && point.y <= high)
        .map((point) => ({ ...point, px: x(point.x), py: y(point.y) })),
      { left: MARGIN.left, right },
    ),
    marks: marks
      .filter((mark) => mark.x <= top)
      .map((mark) => ({ ...mark, px: x(mark.x), anchor: side(x(mark.x)) })),
    wall: wall && wall.y <= high ? y(wall.y) : undefined,
    xTicks: x.ticks(wide ? 8 : 4).map((value) => ({ value, x: x(value) })),
    yTicks: y.ticks(5).map((value) => ({ value, y: y(value) })),
    share: (px) => Math.min(1, Math.max(0, (px - MARGIN.left) / (right - MARGIN.left))),
    x,
    y,
  };
}

/**
 * The value of a line at a speed, between its places by straight lines.
 *
 * @param line - at least one place
 * @param speed - within or beyond its places
 */
export function valueAt({ x, y }: Pick<SpeedLine, 'x' | 'y'>, speed: number): number {
  const places = Array.from(x);
  const after = Math.min(Math.max(bisectLeft(places, speed), 1), Math.max(places.length - 1, 1));
  const from = places[after - 1] ?? 0;
  const to = places[after] ?? from;
  const share = to > from ? (speed - from) / (to - from) : 0;
  const low = y[after - 1] ?? 0;
  return low + share * ((y[after] ?? low) - low);
}

type Scale = ReturnType<typeof scaleLinear<number>>;

interface Ended {
  readonly line: SpeedLine;
  readonly path: string;
  /** px, where it leaves the figure. */
  readonly end: { readonly x: number; readonly y: number };
  readonly leaves: 'top' | 'right';
}

function drawLine(line: SpeedLine, { x, y, high }: { x: Scale; y: Scale; high: number }): Ended {
  const places = Array.from(line.x, (speed, index) => ({ speed, value: line.y[index] ?? 0 }));
  const shape = lineShape<(typeof places)[number]>(
    ({ speed }) => x(speed),
    ({ value }) => y(value),
  );
  const beyond = places.findIndex(
    ({ value }, index) => value > high && places.slice(index).every((later) => later.value > high),
  );
  const last = places.at(-1) ?? { speed: 0, value: 0 };
  if (beyond <= 0) {
    return {
      line,
      path: shape(places) ?? '',
      end: { x: x(last.speed), y: y(last.value) },
      leaves: beyond === 0 ? 'top' : 'right',
    };
  }
  const before = places[beyond - 1] ?? last;
  const after = places[beyond] ?? last;
  const share = (high - before.value) / (after.value - before.value);
  const exit = before.speed + share * (after.speed - before.speed);
  return { line, path: shape(places) ?? '', end: { x: x(exit), y: y(high) }, leaves: 'top' };
}

const LETTER = 5.2;
/** px from a place to its name: below or above, on either side. */
const SPOTS = [
  { side: 1, down: 17 },
  { side: 1, down: -9 },
  { side: -1, down: 17 },
  { side: -1, down: -9 },
] as const;

// Each name takes the first place that is free of other names and lies within the figure.
function namePoints<Point extends { readonly px: number; readonly py: number; readonly name: string }>(
  points: readonly Point[],
  { left, right }: { left: number; right: number },
): (Point & { readonly label: PointLabel | undefined })[] {
  const taken: { from: number; to: number; y: number }[] = [];
  return points.map((point) => {
    const length = point.name.length * LETTER;
    for (const { side, down } of SPOTS) {
      const near = point.px + 7 * side;
      const from = side > 0 ? near : near - length;
      const y = point.py + down;
      const clash = taken.some(
        (other) => Math.abs(other.y - y) < 13 && other.from < from + length + 4 && from < other.to + 4,
      );
      if (clash || from < left || from + length > right) continue;
      taken.push({ from, to: from + length, y });
      return { ...point, label: { x: near, y, anchor: side > 0 ? ('start' as const) : ('end' as const) } };
    }
    return { ...point, label: undefined };
  });
}

function nameLines(
  ended: readonly Ended[],
  { right, base, wide }: { right: number; base: number; wide: boolean },
): DrawnLine[] {
  const atRight = ended.filter(({ leaves }) => leaves === 'right').sort((a, b) => a.end.y - b.end.y);
  const rows = spread(
    atRight.map(({ end }) => end.y),
    { apart: LABEL, from: MARGIN.top + 6, to: base },
  );
  const rowOf = new Map(atRight.map(({ line }, index) => [line, rows[index] ?? 0]));
  return ended.map(({ line, path, end }) => {
    const text = wide ? line.name : line.short;
    const row = rowOf.get(line);
    const label =
      row === undefined
        ? { x: Math.min(end.x, right), y: MARGIN.top - 8, text, anchor: 'end' as const }
        : { x: right + 5, y: row + 4, text, anchor: 'start' as const };
    return { ...line, path, label };
  });
}
