import { nothing, svg } from 'lit';
import type { MapGeometry } from './map-geometry.js';

/** A place in a map. */
export interface MapPlace {
  /** s */
  readonly time: number;
  /** Hz */
  readonly frequency: number;
}

/** What stands around and over the ink of a map: axes, orders, steady frequencies, and where the reader points. */
export function drawMapMarks(geometry: MapGeometry, cursor: MapPlace | undefined) {
  return svg`${drawAxes(geometry)} ${drawMarks(geometry)} ${cursor ? drawCursor(geometry, cursor) : nothing}`;
}

function drawAxes({ plot, timeTicks, frequencyTicks }: MapGeometry) {
  return svg`
    ${frequencyTicks.map(
      (tick) => svg`<line class="axis" x1=${plot.left - 5} x2=${plot.left} y1=${tick.at} y2=${tick.at}></line>
      <text class="anchor-end soft" x=${plot.left - 8} y=${tick.at + 4}>${tick.label}</text>`,
    )}
    ${timeTicks.map(
      (
        tick,
      ) => svg`<line class="axis" x1=${tick.at} x2=${tick.at} y1=${plot.bottom} y2=${plot.bottom + 5}></line>
      <text class="anchor-middle soft" x=${tick.at} y=${plot.bottom + 19}>${tick.label}</text>`,
    )}
    <path class="axis" fill="none" d=${`M${plot.left},${plot.top}V${plot.bottom}H${plot.right}`}></path>
    <text class="anchor-start soft" x="2" y=${plot.top - 9}>Frequency in Hz</text>
    <text class="anchor-middle" x=${(plot.left + plot.right) / 2} y=${plot.bottom + 36}>Time in s</text>`;
}

function drawMarks({ plot, orders, levels }: MapGeometry) {
  return svg`
    ${orders.map(
      ({ path, label }) => svg`<path class="order" d=${path}></path>
      ${label ? svg`<text class="order-name anchor-start" x=${label.x} y=${label.y}>${label.text}</text>` : nothing}`,
    )}
    ${levels.map(
      ({ y, label }) => svg`<line class="level" x1=${plot.left} x2=${plot.right} y1=${y} y2=${y}></line>
      <text class="level-name anchor-start" x=${label.x} y=${label.y}>${label.text}</text>`,
    )}`;
}

function drawCursor({ plot, xOf, yOf }: MapGeometry, { time, frequency }: MapPlace) {
  const [x, y] = [xOf(time), yOf(frequency)];
  return svg`<g data-passing>
    <line class="cursor" x1=${x} x2=${x} y1=${plot.top} y2=${plot.bottom}></line>
    <line class="cursor" x1=${plot.left} x2=${plot.right} y1=${y} y2=${y}></line>
  </g>`;
}
