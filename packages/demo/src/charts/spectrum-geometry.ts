import { scaleLinear, scaleLog } from 'd3';
import { figureText } from './figure-text.js';
import { placeLabels } from './place-labels.js';
import type { SpectrumView } from './spectrum-view.js';
import { thinLine } from './thin-line.js';
import type { Point } from './thin-line.js';

/** A one-sided amplitude spectrum with lines at equal steps from 0. */
export interface SpectrumLines {
  /** Hz between lines. */
  readonly step: number;
  /** Peak amplitude of each line, in the unit of its channel. */
  readonly amplitude: ArrayLike<number>;
}

/** An order of shaft speed to mark. */
export interface OrderMark {
  readonly order: number;
  /** Hz, order × shaft frequency. */
  readonly frequency: number;
  /** Hz, where the sampling shows it. */
  readonly apparentFrequency: number;
  readonly folded: boolean;
  readonly seen: boolean;
}

/** A peak to label. */
export interface PeakMark {
  /** Hz */
  readonly frequency: number;
  readonly amplitude: number;
}

export type AmplitudeScale = 'logarithmic' | 'linear';

export interface SpectrumFrame {
  /** px */
  readonly width: number;
  /** px */
  readonly height: number;
  readonly view: SpectrumView;
  readonly scale: AmplitudeScale;
}

export interface Tick {
  readonly at: number;
  readonly label: string;
}

export interface PlacedOrder extends OrderMark {
  readonly x: number;
  /** Middle of the label and its row from the plot upwards; absent where there is no room. */
  readonly label: { readonly text: string; readonly x: number; readonly row: number } | undefined;
}

export interface PlacedPeak extends PeakMark {
  readonly x: number;
  readonly y: number;
  readonly label: string | undefined;
}

/** Everything the page needs to draw a spectrum. */
export interface SpectrumGeometry {
  readonly plot: {
    readonly left: number;
    readonly right: number;
    readonly top: number;
    readonly bottom: number;
  };
  readonly path: string;
  readonly frequencyTicks: readonly Tick[];
  readonly amplitudeTicks: readonly Tick[];
  readonly orders: readonly PlacedOrder[];
  readonly peaks: readonly PlacedPeak[];
  readonly xOf: (frequency: number) => number;
  readonly yOf: (amplitude: number) => number;
  readonly frequencyAt: (x: number) => number;
}

export const ORDER_ROW = 16;
const ORDER_ROWS = 3;
const LETTER = 7.2;
const MARGIN = { left: 52, right: 12, top: 8, bottom: 40 };

/**
 * Lays out a spectrum: its line thinned to the pixels, its axes, and the labels of its orders and peaks.
 *
 * @param lines - the spectrum
 * @param frame - size, view and amplitude scale; `orders` and `peaks` to mark, strongest peak first
 * @returns paths and places in pixels
 */
export function spectrumGeometry(
  lines: SpectrumLines,
  frame: SpectrumFrame & { readonly orders: readonly OrderMark[]; readonly peaks: readonly PeakMark[] },
): SpectrumGeometry {
  const { width, height, view } = frame;
  const sides = { left: MARGIN.left, right: Math.max(MARGIN.left + 40, width - MARGIN.right) };
  const x = scaleLinear([view.from, view.to], [sides.left, sides.right]);
  const orders = placeOrders(frame.orders, { x, view, sides });
  const top =
    MARGIN.top + ORDER_ROW * orders.reduce((rows, { label }) => Math.max(rows, (label?.row ?? 0) + 1), 1);
  const plot = { ...sides, top, bottom: Math.max(top + 40, height - MARGIN.bottom) };
  const range = shownLines(lines, view);
  const y = amplitudeScale(lines, range, frame.scale).range([plot.bottom, plot.top]).clamp(true);
  const [lowest = 0] = y.domain();
  // A logarithmic scale knows no nought.
  const yOf = (amplitude: number) => y(Math.max(amplitude, lowest));
  return {
    plot,
    path: linePath(thinLine(range.count, (index) => pointOf(lines, range.first + index, { x, yOf }))),
    frequencyTicks: x.ticks(Math.max(2, Math.floor((plot.right - plot.left) / 80))).map(tickAt(x)),
    amplitudeTicks: amplitudeTicks(y, frame.scale),
    orders,
    peaks: placePeaks(frame.peaks, { x, yOf, view, plot }),
    xOf: (frequency) => x(frequency),
    yOf,
    frequencyAt: (px) => x.invert(px),
  };
}

type Pixels = (value: number) => number;
type Plot = SpectrumGeometry['plot'];

function shownLines(lines: SpectrumLines, view: SpectrumView): { first: number; count: number } {
  const last = Math.min(lines.amplitude.length - 1, Math.ceil(view.to / lines.step));
  const first = Math.max(0, Math.floor(view.from / lines.step));
  return { first, count: Math.max(0, last - first + 1) };
}

function pointOf(lines: SpectrumLines, index: number, scale: { x: Pixels; yOf: Pixels }): Point {
  return [scale.x(index * lines.step), scale.yOf(lines.amplitude[index] ?? 0)];
}

function linePath(points: readonly Point[]): string {
  return points.map(([x, y], index) => `${index === 0 ? 'M' : 'L'}${x.toFixed(1)},${y.toFixed(1)}`).join('');
}

/** The line at 0 Hz holds what is left of the mean and must not set the scale. */
function amplitudeScale(
  lines: SpectrumLines,
  range: { first: number; count: number },
  scale: AmplitudeScale,
) {
  const from = Math.max(range.first, 2);
  const shown = Array.from(
    { length: Math.max(0, range.first + range.count - from) },
    (_, index) => lines.amplitude[from + index] ?? 0,
  );
  const highest = shown.reduce((most, value) => Math.max(most, value), 0) || 1;
  if (scale === 'linear') return scaleLinear([0, highest * 1.15], [0, 1]);
  const sorted = Float64Array.from(shown.filter((value) => value > 0)).sort();
  const low = sorted[Math.floor(sorted.length / 20)] ?? highest / 100;
  return scaleLog([Math.max(highest * 1e-6, Math.min(low / 2, highest / 10)), highest * 2], [0, 1]);
}

function amplitudeTicks(y: ReturnType<typeof amplitudeScale>, scale: AmplitudeScale): Tick[] {
  if (scale === 'linear') return y.ticks(5).map(tickAt(y));
  const [lowest = 1, highest = 1] = y.domain();
  const decades = Math.log10(highest / lowest);
  const leading = decades > 3 ? [1] : decades > 1.5 ? [1, 3] : [1, 2, 5];
  const first = Math.floor(Math.log10(lowest));
  return Array.from({ length: Math.ceil(decades) + 2 }, (_, index) => first + index)
    .flatMap((power) => leading.map((digit) => Number(`${digit}e${power}`)))
    .filter((value) => value >= lowest && value <= highest)
    .map(tickAt(y));
}

function tickAt(scale: Pixels): (value: number) => Tick {
  return (value) => ({ at: scale(value), label: shortFigure(value) });
}

/** Ticks are round numbers: no trailing noughts. */
function shortFigure(value: number): string {
  return figureText(value, 4)
    .replace(/(\.\d*?)0+(?=$| )/, '$1')
    .replace(/\.(?=$| )/, '');
}

function placeOrders(
  orders: readonly OrderMark[],
  to: { readonly x: Pixels; readonly view: SpectrumView; readonly sides: Pick<Plot, 'left' | 'right'> },
): PlacedOrder[] {
  const inView = orders.filter(({ apparentFrequency: at }) => at >= to.view.from && at <= to.view.to);
  const texts = inView.map((order) => orderLabel(order));
  const places = placeLabels(
    inView.map((order, index) => ({
      x: to.x(order.apparentFrequency),
      width: (texts[index] ?? '').length * LETTER + 6,
    })),
    { left: to.sides.left - 20, right: to.sides.right + 8, rows: ORDER_ROWS },
  );
  return inView.map((order, index) => {
    const place = places[index];
    const label = place && { text: texts[index] ?? '', ...place };
    return { ...order, x: to.x(order.apparentFrequency), label };
  });
}

/** The name of an order beside its mark. */
export function orderLabel(order: Pick<OrderMark, 'order' | 'folded'>): string {
  return order.folded ? `${order.order}× folded` : `${order.order}×`;
}

function placePeaks(
  peaks: readonly PeakMark[],
  to: { readonly x: Pixels; readonly yOf: Pixels; readonly view: SpectrumView; readonly plot: Plot },
): PlacedPeak[] {
  const inView = peaks.filter(({ frequency }) => frequency >= to.view.from && frequency <= to.view.to);
  const texts = inView.map(({ frequency }) => `${figureText(frequency)} Hz`);
  const places = placeLabels(
    inView.map(({ frequency }, index) => ({
      x: to.x(frequency),
      width: (texts[index] ?? '').length * LETTER + 4,
    })),
    { left: to.plot.left, right: to.plot.right, rows: 1 },
  );
  return inView.map((peak, index) => ({
    ...peak,
    x: to.x(peak.frequency),
    y: to.yOf(peak.amplitude),
    label: places[index] ? texts[index] : undefined,
  }));
}
