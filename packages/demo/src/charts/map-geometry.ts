import { bisectLeft, scaleLinear } from 'd3';
import { figureText } from './figure-text.js';
import type { Tick } from './spectrum-geometry.js';
import type { SpectrumView } from './spectrum-view.js';
import { spread } from './spread.js';

/** Amplitude over time and frequency: columns at equal steps of time, lines at equal steps from 0 Hz. */
export interface MapGrid {
  /** s, middle of the first column. */
  readonly start: number;
  /** s between columns. */
  readonly timeStep: number;
  readonly columns: number;
  /** Hz between lines. */
  readonly step: number;
  readonly lines: number;
  /** Column by column. */
  readonly amplitude: ArrayLike<number>;
}

/** An order of shaft speed through the time of a map. */
export interface MapOrder {
  readonly order: number;
  /** s, ascending. */
  readonly time: ArrayLike<number>;
  /** Hz at each time. */
  readonly frequency: ArrayLike<number>;
  /** Hz at each time, where the sampling shows it. */
  readonly apparent: ArrayLike<number>;
}

/** A frequency that does not follow the shaft. */
export interface MapLevel {
  /** Hz */
  readonly frequency: number;
  readonly name: string;
}

export interface MapFrame {
  /** px */
  readonly width: number;
  /** px */
  readonly height: number;
  readonly view: SpectrumView;
  readonly orders: readonly MapOrder[];
  readonly levels: readonly MapLevel[];
}

export interface PlacedName {
  readonly text: string;
  readonly x: number;
  readonly y: number;
}

export interface MapGeometry {
  readonly plot: {
    readonly left: number;
    readonly right: number;
    readonly top: number;
    readonly bottom: number;
  };
  readonly timeTicks: readonly Tick[];
  readonly frequencyTicks: readonly Tick[];
  readonly orders: readonly { readonly path: string; readonly label: PlacedName | undefined }[];
  readonly levels: readonly { readonly y: number; readonly label: PlacedName }[];
  readonly xOf: (time: number) => number;
  readonly yOf: (frequency: number) => number;
  readonly timeAt: (x: number) => number;
  readonly frequencyAt: (y: number) => number;
}

const MARGIN = { left: 52, right: 44, top: 22, bottom: 40 };
const LETTER_HEIGHT = 14;

/**
 * Lays out a map of amplitude over time and frequency: axes, orders named where they leave it, and steady frequencies.
 *
 * @param grid - what is mapped
 * @param frame - size, view, and what is marked
 * @returns paths and places in pixels
 */
export function mapGeometry(grid: MapGrid, frame: MapFrame): MapGeometry {
  const { width, height, view } = frame;
  const plot = {
    left: MARGIN.left,
    right: Math.max(MARGIN.left + 40, width - MARGIN.right),
    top: MARGIN.top,
    bottom: Math.max(MARGIN.top + 40, height - MARGIN.bottom),
  };
  const half = grid.timeStep / 2;
  const last = grid.start + (grid.columns - 1) * grid.timeStep;
  const x = scaleLinear([grid.start - half, last + half], [plot.left, plot.right]);
  const y = scaleLinear([view.from, view.to], [plot.bottom, plot.top]);
  return {
    plot,
    timeTicks: x.ticks(Math.max(2, Math.floor((plot.right - plot.left) / 60))).map(tickAt(x)),
    frequencyTicks: y.ticks(6).map(tickAt(y)),
    orders: placeOrders(frame.orders, { x, y, view, plot }),
    levels: frame.levels
      .filter(({ frequency }) => frequency > view.from && frequency < view.to)
      .map(({ frequency, name }) => ({
        y: y(frequency),
        label: { text: name, x: plot.left + 6, y: y(frequency) - 5 },
      })),
    xOf: (time) => x(time),
    yOf: (frequency) => y(frequency),
    timeAt: (px) => x.invert(px),
    frequencyAt: (px) => y.invert(px),
  };
}

type Scale = ReturnType<typeof scaleLinear<number>>;

function tickAt(scale: Scale): (value: number) => Tick {
  return (value) => ({
    at: scale(value),
    label: Number.isInteger(value) ? figureText(value, 1) : figureText(value),
  });
}

interface Places {
  readonly x: Scale;
  readonly y: Scale;
  readonly view: SpectrumView;
  readonly plot: MapGeometry['plot'];
}

/** Orders are named beside the right edge, where the eye leaves the map; those that leave elsewhere, not at all. */
function placeOrders(orders: readonly MapOrder[], places: Places): MapGeometry['orders'] {
  const { view, plot, y } = places;
  const ends = orders.map(({ apparent }) => apparent[apparent.length - 1] ?? NaN);
  const named = orders
    .map((order, index) => ({ order, end: ends[index] ?? NaN }))
    .filter(({ end }) => end >= view.from && end <= view.to)
    .sort((a, b) => b.end - a.end);
  const rows = spread(
    named.map(({ end }) => y(end)),
    { apart: LETTER_HEIGHT, from: plot.top, to: plot.bottom },
  );
  return orders.map((order) => {
    const row = rows[named.findIndex((one) => one.order === order)];
    const label = row === undefined ? undefined : { text: `${order.order}×`, x: plot.right + 5, y: row + 4 };
    return { path: orderPath(order, places), label };
  });
}

/** Broken where it is out of view, and where folding turns it around between two times. */
function orderPath({ time, apparent }: MapOrder, { x, y, view }: Places): string {
  let pen = 'M';
  let path = '';
  for (let index = 0; index < time.length; index++) {
    const frequency = apparent[index] ?? NaN;
    if (!(frequency >= view.from && frequency <= view.to)) {
      pen = 'M';
      continue;
    }
    path += `${pen}${x(time[index] ?? 0).toFixed(1)},${y(frequency).toFixed(1)}`;
    pen = 'L';
  }
  return path;
}

/**
 * The value of a series at a time, between its points by straight lines.
 *
 * @param series - times ascending, and a value each
 * @param at - s; outside the series its ends hold
 */
export function seriesAt(
  series: { readonly time: ArrayLike<number>; readonly value: ArrayLike<number> },
  at: number,
): number {
  const times = Array.from(series.time);
  const after = Math.min(Math.max(bisectLeft(times, at), 1), Math.max(times.length - 1, 1));
  const [from = 0, to = 0] = [times[after - 1], times[after]];
  const [low = 0, high = low] = [series.value[after - 1], series.value[after]];
  const share = to > from ? Math.min(1, Math.max(0, (at - from) / (to - from))) : 0;
  return low + share * (high - low);
}
