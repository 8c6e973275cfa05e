import { html, LitElement, nothing, type PropertyValues } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { shared } from '../styles/shared.js';
import { chartStyles } from './chart-styles.js';
import { nextPeak } from './next-peak.js';
import { saveFile } from './save-file.js';
import { SizeController } from './size-controller.js';
import { spectrumGeometry } from './spectrum-geometry.js';
import type {
  AmplitudeScale,
  OrderMark,
  PeakMark,
  SpectrumGeometry,
  SpectrumLines,
} from './spectrum-geometry.js';
import { spectrumCsv } from './spectrum-csv.js';
import { drawSpectrum } from './spectrum-drawing.js';
import { spectrumKey } from './spectrum-keys.js';
import { spectrumReadout } from './spectrum-readout.js';
import { spectrumStyles } from './spectrum-styles.js';
import { spectrumTools } from './spectrum-tools.js';
import { followView, openingView, panView, zoomView } from './spectrum-view.js';
import type { SpectrumView } from './spectrum-view.js';

/** An amplitude spectrum with the orders of shaft speed marked at the line; read out, zoomed and saved. */
@customElement('spectrum-chart')
export class SpectrumChart extends LitElement {
  static override styles = [shared, chartStyles, spectrumStyles];

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

  @query('svg') private readonly drawing!: SVGSVGElement;
  private readonly size = new SizeController(this);
  private geometry: SpectrumGeometry | undefined;
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

  private get width(): number {
    return Math.round(this.size.width);
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
        ${geometry ? drawSpectrum(geometry, { unit: this.unit, cursor: this.cursor, drag: this.drag }) : nothing}
      </div>
      <p class="readout" aria-hidden="true">
        ${this.readout || html`<span class="aside">Point at the figure or use the arrow keys to read it.</span>`}
      </p>
      ${spectrumTools(this.amplitudeScale, {
        zoom: (factor) => {
          this.zoom(factor);
        },
        pan: (share) => {
          this.pan(share);
        },
        reset: this.reset,
        all: () => (this.view = this.whole),
        scale: (scale) => (this.amplitudeScale = scale),
        save: this.saveCsv,
      })}
      <p id="keys" class="unseen">
        Left and right arrows move the read-out, Page Up and Page Down step from peak to peak, plus and minus
        zoom, with Shift the arrows move the view, 0 shows everything that matters.
      </p>
    `;
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
    if (event.pointerType === 'mouse' && !this.drag && !this.matches(':focus-within'))
      this.cursor = undefined;
  }

  // A page must scroll under the wheel: it zooms only with Ctrl, which a pinch on a touch pad also sends.
  private onWheel(event: WheelEvent): void {
    if (!event.ctrlKey || !this.geometry) return;
    event.preventDefault();
    this.zoom(Math.exp(event.deltaY / 300), this.geometry.frequencyAt(this.pixel(event)));
  }

  private onKeydown(event: KeyboardEvent): void {
    const key = spectrumKey(event);
    if (!key) return;
    event.preventDefault();
    const actions: Record<typeof key.does, () => void> = {
      move: () => {
        this.moveCursor(key.sign);
      },
      pan: () => {
        this.pan(key.sign * 0.25);
      },
      peak: () => {
        this.toPeak(key.sign);
      },
      end: () => {
        this.pointAt(key.sign < 0 ? this.shownView.from : this.shownView.to);
      },
      zoom: () => {
        this.zoom(key.sign > 0 ? 0.5 : 2);
      },
      reset: this.reset,
    };
    actions[key.does]();
  }

  private moveCursor(sign: number): void {
    const { from, to } = this.shownView;
    const step = Math.max(this.lines?.step ?? 1, (to - from) / Math.max(1, this.width / 2));
    this.pointAt((this.cursor ?? from) + sign * step);
  }

  private toPeak(sign: 1 | -1): void {
    const next = nextPeak(this.peaks, {
      from: this.cursor ?? this.shownView.from,
      sign,
      clear: (this.lines?.step ?? 0) / 2,
    });
    if (next !== undefined) this.pointAt(next);
  }

  private pointAt(frequency: number): void {
    const { whole } = this;
    this.cursor = Math.max(whole.from, Math.min(whole.to, frequency));
    const shown = this.shownView;
    const followed = followView(shown, { at: this.cursor, whole });
    if (followed !== shown) this.view = followed;
  }

  private readonly saveCsv = (): void => {
    const { lines, unit } = this;
    if (lines) saveFile(`${this.name}.csv`, { text: spectrumCsv(lines, unit), type: 'text/csv' });
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'spectrum-chart': SpectrumChart;
  }
}
