import { curveCatmullRom, group, line as lineShape, max, scaleLinear } from 'd3';

/** A mode along the developed length of a line; lengths in m. */
export interface ModeInput {
  /** Index of the shaft that each place is on: the curve may kink where it changes. */
  readonly shaft: ArrayLike<number>;
  readonly station: ArrayLike<number>;
  readonly displacement: ArrayLike<number>;
  readonly marks: readonly ModeMark[];
}

/** A place on the line that holds or carries something. */
export interface ModeMark {
  readonly kind: 'support' | 'joint' | 'disc';
  readonly name: string;
  /** Stands for the name where there is little room. */
  readonly short: string;
  /** m along the developed length */
  readonly station: number;
}

export interface ModeFigure {
  readonly path: string;
  /** The same curve mirrored: the other end of the swing. */
  readonly mirrored: string;
  readonly axis: number;
  readonly left: number;
  readonly right: number;
  readonly marks: readonly (ModeMark & {
    readonly x: number;
    readonly y: number;
    readonly labelRow: number;
  })[];
  readonly largest: { readonly x: number; readonly y: number; readonly station: number };
}

const MARGIN = { side: 22, top: 34, bottom: 46 };

/**
 * Lays out how a line whirls in one mode.
 *
 * @param input - shape and marks
 * @param room - px
 */
export function layoutMode(
  { shaft, station, displacement, marks }: ModeInput,
  { width, height }: { readonly width: number; readonly height: number },
): ModeFigure {
  const stations = Array.from(station);
  const shape = Array.from(displacement);
  const size = max(shape, Math.abs) ?? 0;
  const axis = (MARGIN.top + height - MARGIN.bottom) / 2;
  const x = scaleLinear([0, max(stations) ?? 1], [MARGIN.side, width - MARGIN.side]);
  const y = scaleLinear([-1, 1], [height - MARGIN.bottom, MARGIN.top]);
  const scaled = shape.map((value) => (size > 0 ? value / size : 0));
  const places = scaled.map((value, index) => ({
    value,
    station: stations[index] ?? 0,
    shaft: shaft[index] ?? 0,
  }));
  const pieces = [...group(places, (place) => place.shaft).values()];
  const draw = (sign: 1 | -1) => {
    const piece = lineShape<(typeof places)[number]>(
      (place) => x(place.station),
      (place) => y(sign * place.value),
    ).curve(curveCatmullRom);
    return pieces.map((places) => piece(places) ?? '').join(' ');
  };
  const peak = scaled.reduce(
    (best, value, index) => (Math.abs(value) > Math.abs(scaled[best] ?? 0) ? index : best),
    0,
  );
  return {
    path: draw(1),
    mirrored: draw(-1),
    axis,
    left: MARGIN.side,
    right: width - MARGIN.side,
    marks: rowsOf(
      marks.map((mark) => ({
        ...mark,
        name: width < 560 ? mark.short : mark.name,
        x: x(mark.station),
        y: y(valueAt(mark.station, { stations, scaled })),
      })),
    ),
    largest: { x: x(stations[peak] ?? 0), y: y(scaled[peak] ?? 0), station: stations[peak] ?? 0 },
  };
}

function valueAt(place: number, { stations, scaled }: { stations: number[]; scaled: number[] }): number {
  const after = stations.findIndex((station) => station >= place - 1e-9);
  const index = after < 0 ? stations.length - 1 : after;
  const to = stations[index] ?? 0;
  const from = stations[index - 1] ?? to;
  const share = to > from ? (place - from) / (to - from) : 1;
  return (scaled[index - 1] ?? scaled[index] ?? 0) * (1 - share) + (scaled[index] ?? 0) * share;
}

// Names of neighbours that would touch go to a second row.
function rowsOf<Mark extends { readonly x: number; readonly name: string }>(
  marks: readonly Mark[],
): (Mark & { readonly labelRow: number })[] {
  const ends = [-Infinity, -Infinity];
  return [...marks]
    .sort((a, b) => a.x - b.x)
    .map((mark) => {
      const half = mark.name.length * 3.2 + 4;
      const row = ends.findIndex((end) => mark.x - half > end);
      const labelRow = row < 0 ? 2 : row;
      ends[labelRow] = mark.x + half;
      return { ...mark, labelRow };
    });
}
