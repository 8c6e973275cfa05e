import { css, html, LitElement, nothing, svg, type PropertyValues } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { shared } from '../styles/shared.js';
import { chartStyles } from './chart-styles.js';
import { figureSvg } from './figure-svg.js';
import { saveFile } from './save-file.js';
import { ORDER_ROW, spectrumGeometry } from './spectrum-geometry.js';
import type {
  AmplitudeScale,
  OrderMark,
  PeakMark,
  SpectrumGeometry,
  SpectrumLines,
} from './spectrum-geometry.js';
import { spectrumReadout } from './spectrum-readout.js';
import { openingView, panView, zoomView } from './spectrum-view.js';
import type { SpectrumView } from './spectrum-view.js';

/** An amplitude spectrum with the orders of shaft speed marked at the line; read out, zoomed and saved. */
@customElement('spectrum-chart')
export class SpectrumChart extends LitElement {
  static override styles = [
    shared,
    chartStyles,
    css`
      .order {
        stroke: var(--accent);
        stroke-width: 1.5;
      }
      .order.folded {
        stroke-dasharray: 5 4;
      }
      .order.unseen-order {
        stroke: var(--line);
        stroke-width: 1;
      }
      text.order-label {
        stroke: none;
        fill: var(--accent);
        font-weight: 600;
      }
      text.order-label.unseen-order {
        fill: var(--ink-soft);
        font-weight: 400;
      }
      .peak {
        fill: var(--sheet);
        stroke: var(--accent);
        stroke-width: 1.5;
      }
      .cursor {
        stroke: var(--ink);
        stroke-width: 1;
      }
      .brush {
        fill: var(--accent);
        fill-opacity: 0.18;
      }
    `,
  ];

  @property({ attribute: false }) lines: SpectrumLines | undefined;
  @property() unit = '';
  /** What the figure shows, for its label and its file name. */
  @property() name = 'Spectrum';
  @property({ attribute: false }) orders: readonly OrderMark[] = [];
  /** Strongest first. */
  @property({ attribute: false }) peaks: readonly PeakMark[] = [];
  /** Hz, turns a second of the shaft. */
  @property({ type: Number }) shaftFrequency: number | undefined;

  @state() private view: SpectrumView | undefined;
  @state() private amplitudeScale: AmplitudeScale = 'logarithmic';
  @state() private cursor: number | undefined;
  @state() private drag: { readonly from: number; readonly to: number } | undefined;
  @state() private width = 0;

  @query('svg') private readonly drawing!: SVGSVGElement;
  private geometry: SpectrumGeometry | undefined;
  private readonly observer = new ResizeObserver(([entry]) => {
    if (entry) this.width = Math.round(entry.contentRect.width);
  });

  override connectedCallback(): void {
    super.connectedCallback();
    this.observer.observe(this);
  }

  override disconnectedCallback(): void {
    this.observer.disconnect();
    super.disconnectedCallback();
  }

  protected override willUpdate(changed: PropertyValues): void {
    if (changed.has('name')) this.view = undefined;
    this.geometry = this.lines && this.width > 0 ? this.layOut(this.lines) : undefined;
  }

  private layOut(lines: SpectrumLines): SpectrumGeometry {
    return spectrumGeometry(lines, {
      width: this.width,
      height: Math.round(Math.min(380, Math.max(280, this.width * 0.45))),
      view: this.shownView,
      scale: this.amplitudeScale,
      orders: this.orders,
      peaks: this.peaks,
    });
  }

  private get whole(): SpectrumView {
    const { lines } = this;
    return { from: 0, to: lines ? (lines.amplitude.length - 1) * lines.step : 1 };
  }

  private get shownView(): SpectrumView {
    if (this.view) return this.view;
    const marked = this.orders.filter((order) => order.seen).map((order) => order.apparentFrequency);
    const strongest = this.peaks.slice(0, 6).map((peak) => peak.frequency);
    return openingView([...marked, ...strongest, (this.shaftFrequency ?? 0) * 3], this.whole);
  }

  private get readout(): string {
    const { lines, cursor, unit, orders, shaftFrequency } = this;
    if (!lines || cursor === undefined) return '';
    return spectrumReadout(lines, { at: cursor, unit, orders, shaftFrequency });
  }

  protected override render() {
    const { geometry } = this;
    const value = this.cursor ?? this.shownView.from;
    return html`
      <div
        class="figure"
        role="slider"
        tabindex="0"
        aria-label=${`${this.name}: read-out along frequency`}
        aria-valuemin=${0}
        aria-valuemax=${this.whole.to}
        aria-valuenow=${value}
        aria-valuetext=${this.readout || 'Use the arrow keys to read the spectrum'}
        aria-describedby="keys"
        @keydown=${this.onKeydown}
        @pointerdown=${this.onPointerDown}
        @pointermove=${this.onPointerMove}
        @pointerup=${this.onPointerUp}
        @pointercancel=${this.onPointerCancel}
        @pointerleave=${this.onPointerLeave}
        @wheel=${this.onWheel}
      >
        ${geometry ? this.renderDrawing(geometry) : nothing}
      </div>
      <p class="readout" aria-hidden="true">
        ${this.readout || html`<span class="aside">Point at the figure or use the arrow keys to read it.</span>`}
      </p>
      ${this.renderTools()}
      <p id="keys" class="unseen">
        Left and right arrows move the read-out, Page Up and Page Down step from peak to peak, plus and minus
        zoom, with Shift the arrows move the view, 0 shows everything that matters.
      </p>
    `;
  }

  private renderTools() {
    const other = this.amplitudeScale === 'linear' ? 'logarithmic' : 'linear';
    return html`<div class="tools">
      <button type="button" aria-label="Zoom in" @click=${() => this.zoom(0.5)}>+</button>
      <button type="button" aria-label="Zoom out" @click=${() => this.zoom(2)}>−</button>
      <button type="button" aria-label="Move to lower frequencies" @click=${() => this.pan(-0.5)}>◂</button>
      <button type="button" aria-label="Move to higher frequencies" @click=${() => this.pan(0.5)}>▸</button>
      <button type="button" @click=${this.reset}>Reset</button>
      <button type="button" @click=${() => (this.view = this.whole)}>Whole range</button>
      <button type="button" @click=${() => (this.amplitudeScale = other)}>
        ${other === 'linear' ? 'Linear scale' : 'Log scale'}
      </button>
      <button type="button" @click=${this.saveSvg}>Save SVG</button>
      <button type="button" @click=${this.saveCsv}>Save CSV</button>
    </div>`;
  }

  private renderDrawing(geometry: SpectrumGeometry) {
    const { plot } = geometry;
    const height = plot.bottom + 40;
    const middle = (plot.left + plot.right) / 2;
    return html`<svg viewBox="0 0 ${this.width} ${height}" height=${height} aria-hidden="true">
      <defs>
        <clipPath id="inside">
          <rect x=${plot.left} y="0" width=${plot.right - plot.left} height=${plot.bottom + 1}></rect>
        </clipPath>
      </defs>
      ${this.renderAxes(geometry)}
      <g clip-path="url(#inside)"><path class="trace" d=${geometry.path}></path></g>
      ${geometry.orders.map((order) => this.renderOrder(order, plot))}
      ${geometry.peaks.map((peak) => this.renderPeak(peak))} ${this.renderPassing(geometry)}
      <text class="anchor-middle" x=${middle} y=${plot.bottom + 36}>Frequency in Hz</text>
      <text class="anchor-start soft" x="2" y=${plot.top - 6}>${this.unit}</text>
    </svg>`;
  }

  private renderAxes({ plot, frequencyTicks, amplitudeTicks }: SpectrumGeometry) {
    return svg`
      ${amplitudeTicks.map(
        (tick) => svg`<line class="grid" x1=${plot.left} x2=${plot.right} y1=${tick.at} y2=${tick.at}></line>
        <text class="anchor-end soft" x=${plot.left - 6} y=${tick.at + 4}>${tick.label}</text>`,
      )}
      ${frequencyTicks.map(
        (tick) => svg`<line class="axis" x1=${tick.at} x2=${tick.at} y1=${plot.bottom} y2=${plot.bottom + 5}></line>
        <text class="anchor-middle soft" x=${tick.at} y=${plot.bottom + 19}>${tick.label}</text>`,
      )}
      <line class="axis" x1=${plot.left} x2=${plot.right} y1=${plot.bottom} y2=${plot.bottom}></line>`;
  }

  private renderOrder(order: SpectrumGeometry['orders'][number], plot: SpectrumGeometry['plot']) {
    const kind = `${order.folded ? 'folded' : ''} ${order.seen ? '' : 'unseen-order'}`;
    const { label } = order;
    const top = label ? plot.top - 6 - label.row * ORDER_ROW : plot.top;
    return svg`
      <line class="order ${kind}" x1=${order.x} x2=${order.x} y1=${top + 2} y2=${plot.bottom}></line>
      ${
        label &&
        svg`<text class="order-label anchor-middle ${kind}" x=${label.x} y=${top - 2}>${label.text}</text>`
      }`;
  }

  private renderPeak(peak: SpectrumGeometry['peaks'][number]) {
    return svg`
      <circle class="peak" cx=${peak.x} cy=${peak.y} r="3.5"></circle>
      ${peak.label && svg`<text class="anchor-middle" x=${peak.x} y=${peak.y - 8}>${peak.label}</text>`}`;
  }

  private renderPassing({ plot, xOf }: SpectrumGeometry) {
    const { cursor, drag } = this;
    const x = cursor === undefined ? undefined : xOf(cursor);
    const shown = x !== undefined && x >= plot.left && x <= plot.right;
    return svg`
      ${
        shown
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

  private zoom(factor: number, about?: number): void {
    const view = this.shownView;
    const held = this.cursor !== undefined && this.cursor >= view.from && this.cursor <= view.to;
    const middle = held ? this.cursor : (view.from + view.to) / 2;
    this.view = zoomView(view, { factor, about: about ?? middle ?? 0, whole: this.whole });
  }

  private pan(share: number): void {
    this.view = panView(this.shownView, { share, whole: this.whole });
  }

  private readonly reset = (): void => {
    this.view = undefined;
    this.cursor = undefined;
  };

  private pixel(event: MouseEvent): number {
    const { geometry } = this;
    const x = event.clientX - this.drawing.getBoundingClientRect().left;
    return geometry ? Math.max(geometry.plot.left, Math.min(geometry.plot.right, x)) : x;
  }

  private onPointerDown(event: PointerEvent): void {
    if (event.button !== 0 || !this.geometry) return;
    const x = this.pixel(event);
    this.drag = { from: x, to: x };
    this.cursor = this.geometry.frequencyAt(x);
    (event.currentTarget as HTMLElement).setPointerCapture(event.pointerId);
  }

  private onPointerMove(event: PointerEvent): void {
    if (!this.geometry) return;
    const x = this.pixel(event);
    this.cursor = this.geometry.frequencyAt(x);
    if (this.drag) this.drag = { ...this.drag, to: x };
  }

  private onPointerUp(): void {
    const { drag, geometry } = this;
    this.drag = undefined;
    if (!drag || !geometry || Math.abs(drag.to - drag.from) < 12) return;
    const [from = 0, to = 1] = [drag.from, drag.to].map(geometry.frequencyAt).sort((a, b) => a - b);
    this.view = { from, to };
  }

  private onPointerCancel(): void {
    this.drag = undefined;
  }

  private onPointerLeave(event: PointerEvent): void {
    if (event.pointerType === 'mouse' && !this.drag && !this.matches(':focus-within')) this.cursor = undefined;
  }

  // A page must scroll under the wheel: it zooms only with Ctrl, which a pinch on a touch pad also sends.
  private onWheel(event: WheelEvent): void {
    if (!event.ctrlKey || !this.geometry) return;
    event.preventDefault();
    this.zoom(Math.exp(event.deltaY / 300), this.geometry.frequencyAt(this.pixel(event)));
  }

  private onKeydown(event: KeyboardEvent): void {
    const action = this.keyAction(event);
    if (!action) return;
    event.preventDefault();
    action();
  }

  private keyAction(event: KeyboardEvent): (() => void) | undefined {
    const sign = event.key === 'ArrowRight' || event.key === 'PageUp' ? 1 : -1;
    switch (event.key) {
      case 'ArrowLeft':
      case 'ArrowRight':
        return event.shiftKey ? () => this.pan(sign * 0.25) : () => this.moveCursor(sign);
      case 'PageUp':
      case 'PageDown':
        return () => this.toPeak(sign);
      case 'Home':
        return () => this.pointAt(this.shownView.from);
      case 'End':
        return () => this.pointAt(this.shownView.to);
      case '+':
      case '=':
        return () => this.zoom(0.5);
      case '-':
        return () => this.zoom(2);
      case '0':
      case 'Escape':
        return this.reset;
      default:
        return undefined;
    }
  }

  private moveCursor(sign: number): void {
    const { from, to } = this.shownView;
    const step = Math.max(this.lines?.step ?? 1, (to - from) / Math.max(1, this.width / 2));
    this.pointAt((this.cursor ?? from) + sign * step);
  }

  private toPeak(sign: number): void {
    const at = this.cursor ?? this.shownView.from;
    const away = this.peaks
      .map((peak) => peak.frequency)
      .filter((frequency) => sign * (frequency - at) > (this.lines?.step ?? 0) / 2)
      .sort((a, b) => sign * (a - b));
    if (away[0] !== undefined) this.pointAt(away[0]);
  }

  private pointAt(frequency: number): void {
    const { whole } = this;
    const at = Math.max(whole.from, Math.min(whole.to, frequency));
    this.cursor = at;
    const view = this.shownView;
    if (at < view.from || at > view.to) {
      const half = (view.to - view.from) / 2;
      this.view = zoomView({ from: at - half, to: at + half }, { factor: 1, about: at, whole });
    }
  }

  private readonly saveSvg = (): void => {
    const paper = getComputedStyle(this).getPropertyValue('--sheet') || 'white';
    saveFile(`${this.name}.svg`, { text: figureSvg(this.drawing, paper), type: 'image/svg+xml' });
  };

  private readonly saveCsv = (): void => {
    const { lines } = this;
    if (!lines) return;
    const rows = Array.from(lines.amplitude, (value, index) => `${index * lines.step},${value}`);
    const text = [`frequency (Hz),amplitude (${this.unit})`, ...rows].join('\n');
    saveFile(`${this.name}.csv`, { text, type: 'text/csv' });
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'spectrum-chart': SpectrumChart;
  }
}
