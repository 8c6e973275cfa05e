import { scaleLinear } from 'd3';
import { figureText } from './figure-text.js';
import type { Tick } from './spectrum-geometry.js';

/** The lowest and highest sample of each of many equal stretches of a recording. */
export interface Envelope {
  readonly lowest: ArrayLike<number>;
  readonly highest: ArrayLike<number>;
  /** s, of the whole. */
  readonly duration: number;
}

/** A stretch of time. */
export interface TimeSpan {
  /** s */
  readonly from: number;
  /** s */
  readonly to: number;
}

export interface WaveformFrame {
  /** px */
  readonly width: number;
  /** px */
  readonly height: number;
  /** The part that is chosen. */
  readonly part: TimeSpan;
  /** Stretches without samples. */
  readonly gaps: readonly TimeSpan[];
}

/** A box in pixels along the time axis. */
export interface PlacedSpan {
  readonly x: number;
  readonly width: number;
}

export interface WaveformGeometry {
  readonly plot: {
    readonly left: number;
    readonly right: number;
    readonly top: number;
    readonly bottom: number;
  };
  readonly path: string;
  readonly timeTicks: readonly Tick[];
  readonly part: PlacedSpan;
  readonly gaps: readonly PlacedSpan[];
  readonly timeAt: (x: number) => number;
}

const MARGIN = { left: 12, right: 12, top: 6, bottom: 36 };

/**
 * Lays out a recording over time as the band between its lowest and highest samples.
 *
 * @param envelope - the band
 * @param frame - size, chosen part and gaps
 * @returns paths and places in pixels
 */
export function waveformGeometry(envelope: Envelope, frame: WaveformFrame): WaveformGeometry {
  const plot = {
    left: MARGIN.left,
    right: Math.max(MARGIN.left + 40, frame.width - MARGIN.right),
    top: MARGIN.top,
    bottom: Math.max(MARGIN.top + 20, frame.height - MARGIN.bottom),
  };
  const x = scaleLinear([0, envelope.duration], [plot.left, plot.right]).clamp(true);
  const place = (span: TimeSpan) => ({ x: x(span.from), width: Math.max(1, x(span.to) - x(span.from)) });
  return {
    plot,
    path: band(envelope, plot),
    timeTicks: x
      .ticks(Math.max(2, Math.floor((plot.right - plot.left) / 90)))
      .map((time) => ({ at: x(time), label: figureText(time).replace(/\.0+$|(\.\d*?)0+$/, '$1') })),
    part: place(frame.part),
    gaps: frame.gaps.map(place),
    timeAt: (px) => x.invert(px),
  };
}

function band(envelope: Envelope, plot: WaveformGeometry['plot']): string {
  const count = envelope.lowest.length;
  const reach = farthest(envelope);
  const middle = (plot.top + plot.bottom) / 2;
  const half = (plot.bottom - plot.top) / 2;
  const step = (plot.right - plot.left) / Math.max(1, count);
  const point = (index: number, value: number) =>
    `${(plot.left + (index + 0.5) * step).toFixed(1)},${(middle - (value / reach) * half).toFixed(1)}`;
  const upper = Array.from({ length: count }, (_, index) => point(index, envelope.highest[index] ?? 0));
  const lower = Array.from({ length: count }, (_, index) => point(index, envelope.lowest[index] ?? 0));
  return count === 0 ? '' : `M${upper.join('L')}L${lower.reverse().join('L')}Z`;
}

function farthest(envelope: Envelope): number {
  let reach = 0;
  for (let index = 0; index < envelope.lowest.length; index++) {
    reach = Math.max(reach, Math.abs(envelope.lowest[index] ?? 0), Math.abs(envelope.highest[index] ?? 0));
  }
  return reach || 1;
}
