import { html, nothing, svg } from 'lit';
import { ORDER_ROW } from './spectrum-geometry.js';
import type { SpectrumGeometry } from './spectrum-geometry.js';

/** What lies over a spectrum for a moment. */
export interface SpectrumOverlay {
  readonly unit: string;
  /** Hz, where the reader points. */
  readonly cursor: number | undefined;
  /** px, the stretch that is being dragged over. */
  readonly drag: { readonly from: number; readonly to: number } | undefined;
}

/** Room under the plot for ticks and the name of the axis, in pixels. */
const BELOW = 40;
/** Room beside the plot. */
const RIGHT = 12;

/**
 * A spectrum as a drawing.
 *
 * @param geometry - paths and places
 * @param overlay - read-out line and drag
 * @returns the template of an SVG
 */
export function drawSpectrum(geometry: SpectrumGeometry, overlay: SpectrumOverlay) {
  const { plot } = geometry;
  const height = plot.bottom + BELOW;
  const width = plot.right + RIGHT;
  const middle = (plot.left + plot.right) / 2;
  return html`<svg viewBox="0 0 ${width} ${height}" height=${height} aria-hidden="true">
    <defs>
      <clipPath id="inside">
        <rect x=${plot.left} y="0" width=${plot.right - plot.left} height=${plot.bottom + 1}></rect>
      </clipPath>
    </defs>
    ${drawAxes(geometry)} ${geometry.orders.map((order) => drawOrder(order, plot))}
    <g clip-path="url(#inside)"><path class="trace" d=${geometry.path}></path></g>
    ${geometry.peaks.map((peak) => drawPeak(peak))} ${drawPassing(geometry, overlay)}
    <text class="anchor-middle" x=${middle} y=${plot.bottom + 36}>Frequency in Hz</text>
    <text class="anchor-start soft" x="2" y=${plot.top - 6}>${overlay.unit}</text>
  </svg>`;
}

function drawAxes({ plot, frequencyTicks, amplitudeTicks }: SpectrumGeometry) {
  return svg`
    ${amplitudeTicks.map(
      (tick) => svg`<line class="grid" x1=${plot.left} x2=${plot.right} y1=${tick.at} y2=${tick.at}></line>
      <text class="anchor-end soft" x=${plot.left - 6} y=${tick.at + 4}>${tick.label}</text>`,
    )}
    ${frequencyTicks.map(
      (
        tick,
      ) => svg`<line class="axis" x1=${tick.at} x2=${tick.at} y1=${plot.bottom} y2=${plot.bottom + 5}></line>
      <text class="anchor-middle soft" x=${tick.at} y=${plot.bottom + 19}>${tick.label}</text>`,
    )}
    <line class="axis" x1=${plot.left} x2=${plot.right} y1=${plot.bottom} y2=${plot.bottom}></line>`;
}

function drawOrder(order: SpectrumGeometry['orders'][number], plot: SpectrumGeometry['plot']) {
  const kind = `${order.folded ? 'folded' : ''} ${order.seen ? '' : 'unseen-order'}`;
  const { label } = order;
  const top = label ? plot.top - 6 - label.row * ORDER_ROW : plot.top;
  return svg`
    <line class="order ${kind}" x1=${order.x} x2=${order.x} y1=${top + 2} y2=${plot.bottom}></line>
    ${
      label
        ? svg`<text class="order-label anchor-middle ${kind}" x=${label.x} y=${top - 2}>${label.text}</text>`
        : nothing
    }`;
}

function drawPeak(peak: SpectrumGeometry['peaks'][number]) {
  return svg`
    <circle class="peak" cx=${peak.x} cy=${peak.y} r="3.5"></circle>
    ${peak.label ? svg`<text class="anchor-middle" x=${peak.x} y=${peak.y - 8}>${peak.label}</text>` : nothing}`;
}

function drawPassing({ plot, xOf }: SpectrumGeometry, { cursor, drag }: SpectrumOverlay) {
  const x = cursor === undefined ? NaN : xOf(cursor);
  return svg`
    ${
      x >= plot.left && x <= plot.right
        ? svg`<line data-passing class="cursor" x1=${x} x2=${x} y1=${plot.top} y2=${plot.bottom}></line>`
        : nothing
    }
    ${
      drag
        ? svg`<rect data-passing class="brush" x=${Math.min(drag.from, drag.to)} y=${plot.top}
            width=${Math.abs(drag.to - drag.from)} height=${plot.bottom - plot.top}></rect>`
        : nothing
    }`;
}
