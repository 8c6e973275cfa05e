import { extent, scaleLinear } from 'd3';

/** A point of an axis as a ruler finds it: how far aft, and how high or how far to port, in one unit. */
export interface MeasurePoint {
  readonly name: string;
  readonly at: number;
  readonly from: number;
}

/** One view of the two axes. */
export interface MeasureView {
  readonly motor: readonly [MeasurePoint, MeasurePoint];
  readonly tube: readonly [MeasurePoint, MeasurePoint];
}

/** A segment in px. */
export interface Segment {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}

export interface MeasureFigure {
  readonly base: number;
  readonly left: number;
  readonly right: number;
  readonly axes: readonly Segment[];
  readonly points: readonly { readonly name: string; readonly x: number; readonly y: number }[];
  /** Where the axes cross in this view, if between or near their stations. */
  readonly crossing: { readonly x: number; readonly y: number } | undefined;
}

const MARGIN = { left: 18, right: 18, top: 26, bottom: 26 };
/** How far beyond its stations an axis is drawn, as a share of the whole figure. */
const BEYOND = 0.06;

/**
 * Lays out what is measured in one view: a reference line, the stations on it, and the axes through their points. Heights
 * are drawn larger than lengths where the axes are nearly level, so that what is measured can be seen.
 *
 * @param view - both axes
 * @param room - px
 */
export function layoutMeasures(
  { motor, tube }: MeasureView,
  { width, height }: { readonly width: number; readonly height: number },
): MeasureFigure {
  const all = [...motor, ...tube];
  const [aftLeast = 0, aftMost = 1] = extent(all, ({ at }) => at);
  const reach = Math.max(aftMost - aftLeast, 1e-9);
  const [low = 0, high = 1] = extent([0, ...all.map(({ from }) => from)]);
  const x = scaleLinear(
    [aftLeast - BEYOND * reach, aftMost + BEYOND * reach],
    [MARGIN.left, width - MARGIN.right],
  );
  const span = Math.max(high - low, reach * 0.02);
  const y = scaleLinear([low, low + span], [height - MARGIN.bottom, MARGIN.top]);
  const crossing = cross(motor, tube);
  const toCrossing = crossing && crossing.at > aftLeast && crossing.at < aftMost ? crossing : undefined;
  const segment = (axis: readonly [MeasurePoint, MeasurePoint], aft: number, fore: number): Segment => ({
    x1: x(fore),
    y1: y(along(axis, fore)),
    x2: x(aft),
    y2: y(along(axis, aft)),
  });
  const motorEnd = toCrossing?.at ?? Math.max(motor[0].at, motor[1].at) + BEYOND * reach;
  const tubeStart = toCrossing?.at ?? Math.min(tube[0].at, tube[1].at) - BEYOND * reach;
  return {
    base: y(0),
    left: MARGIN.left,
    right: width - MARGIN.right,
    axes: [
      segment(motor, motorEnd, aftLeast - BEYOND * reach),
      segment(tube, aftMost + BEYOND * reach, tubeStart),
    ],
    points: all.map(({ name, at, from }) => ({ name, x: x(at), y: y(from) })),
    crossing: toCrossing && { x: x(toCrossing.at), y: y(toCrossing.from) },
  };
}

function slope([first, second]: readonly [MeasurePoint, MeasurePoint]): number {
  return (second.from - first.from) / (second.at - first.at || 1e-9);
}

function along(axis: readonly [MeasurePoint, MeasurePoint], at: number): number {
  return axis[0].from + slope(axis) * (at - axis[0].at);
}

function cross(
  motor: readonly [MeasurePoint, MeasurePoint],
  tube: readonly [MeasurePoint, MeasurePoint],
): { readonly at: number; readonly from: number } | undefined {
  const turn = slope(motor) - slope(tube);
  if (Math.abs(turn) < 1e-6) return undefined;
  const at = (along(tube, 0) - along(motor, 0)) / turn;
  return { at, from: along(motor, at) };
}
