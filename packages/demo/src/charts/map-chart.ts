import { css, html, LitElement, nothing, type PropertyValues } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { shared } from '../styles/shared.js';
import { chartStyles } from './chart-styles.js';
import { mapCsv } from './map-csv.js';
import { drawMapMarks } from './map-drawing.js';
import type { MapPlace } from './map-drawing.js';
import { mapGeometry } from './map-geometry.js';
import type { MapGeometry, MapGrid, MapLevel, MapOrder } from './map-geometry.js';
import { mapReadout } from './map-readout.js';
import { mapShades } from './map-shades.js';
import { saveFile } from './save-file.js';
import { shadeImage } from './shade-image.js';
import { SizeController } from './size-controller.js';
import { openingView, panView, zoomView } from './spectrum-view.js';
import type { SpectrumView } from './spectrum-view.js';

/** Amplitude over time and frequency, as ink on paper: the stronger, the denser. Read out by pointer or arrow keys. */
@customElement('map-chart')
export class MapChart extends LitElement {
  static override styles = [
    shared,
    chartStyles,
    css`
      .ink {
        fill: var(--ink);
      }
      image {
        image-rendering: pixelated;
      }
      .order {
        fill: none;
        stroke: var(--accent);
        stroke-width: 1.5;
        stroke-dasharray: 2 5;
        stroke-linecap: round;
      }
      .order-name {
        fill: var(--accent);
        font-weight: 600;
      }
      .level {
        stroke: var(--warn);
        stroke-width: 1.25;
        stroke-dasharray: 8 4;
      }
      .level-name {
        paint-order: stroke;
        stroke: var(--paper);
        stroke-width: 4px;
        stroke-linejoin: round;
        font-weight: 600;
      }
      .cursor {
        stroke: var(--accent);
        stroke-width: 1;
      }
    `,
  ];

  @property({ attribute: false }) grid: MapGrid | undefined;
  @property({ attribute: false }) orders: readonly MapOrder[] = [];
  @property({ attribute: false }) levels: readonly MapLevel[] = [];
  @property() unit = '';
  /** What the figure shows, for its label and its file name. */
  @property() name = 'Map';

  @state() private view: SpectrumView | undefined;
  @state() private cursor: MapPlace | undefined;
  @query('svg') private readonly drawing!: SVGSVGElement;
  private readonly size = new SizeController(this);
  private geometry: MapGeometry | undefined;
  private image = { key: '', href: '' };

  protected override willUpdate(changed: PropertyValues): void {
    if (changed.has('name')) this.view = undefined;
    if (changed.has('grid')) this.image = { key: '', href: '' };
    const width = Math.round(this.size.width);
    const { grid } = this;
    this.geometry = grid && width > 0 ? this.layOut(grid, width) : undefined;
    if (grid && this.geometry) this.ink(grid, this.geometry);
  }

  private layOut(grid: MapGrid, width: number): MapGeometry {
    const height = Math.round(Math.min(400, Math.max(280, width * 0.45)));
    const { orders, levels } = this;
    return mapGeometry(grid, { width, height, view: this.shownView, orders, levels });
  }

  private ink(grid: MapGrid, { plot }: MapGeometry): void {
    const view = this.shownView;
    const key = [view.from, view.to, plot.bottom].join(' ');
    if (this.image.key === key) return;
    const rows = Math.round(plot.bottom - plot.top);
    this.image = { key, href: shadeImage(mapShades(grid, { view, rows })) };
  }

  private get whole(): SpectrumView {
    const { grid } = this;
    return { from: 0, to: grid ? (grid.lines - 1) * grid.step : 1 };
  }

  private get shownView(): SpectrumView {
    if (this.view) return this.view;
    const tops = this.orders.map(({ apparent }) =>
      Array.from(apparent).reduce((most, value) => Math.max(most, value), 0),
    );
    return openingView([...tops, ...this.levels.map(({ frequency }) => frequency)], this.whole);
  }

  private get readout(): string {
    const { grid, cursor, unit, orders } = this;
    return grid && cursor ? mapReadout(grid, { ...cursor, unit, orders }) : '';
  }

  protected override render() {
    const { geometry, cursor, grid } = this;
    return html`
      <div
        class="figure"
        role="slider"
        tabindex="0"
        aria-label=${`${this.name}: read-out over time and frequency`}
        aria-valuemin=${0}
        aria-valuemax=${grid ? grid.start + grid.columns * grid.timeStep : 0}
        aria-valuenow=${cursor?.time ?? 0}
        aria-valuetext=${this.readout || 'Use the arrow keys to read the map'}
        aria-describedby="keys"
        @keydown=${this.onKeydown}
        @pointermove=${this.onPointer}
        @pointerdown=${this.onPointer}
        @pointerleave=${this.onPointerLeave}
      >
        ${geometry ? this.renderDrawing(geometry) : nothing}
      </div>
      <p class="readout" aria-hidden="true">
        ${this.readout || html`<span class="aside">Point at the map or use the arrow keys to read it.</span>`}
      </p>
      ${this.renderTools()}
      <p id="keys" class="unseen">
        Left and right arrows move through time, up and down through frequency, with Shift faster; plus and
        minus zoom the frequencies, 0 shows what matters.
      </p>
    `;
  }

  private renderTools() {
    const tool = (label: string, does: () => void, name = label) =>
      html`<button type="button" aria-label=${name} @click=${does}>${label}</button>`;
    return html`<div class="tools">
      ${tool('+', () => (this.view = this.zoomed(0.5)), 'Zoom in')}
      ${tool('−', () => (this.view = this.zoomed(2)), 'Zoom out')}
      ${tool('▾', () => (this.view = this.panned(-0.5)), 'Move to lower frequencies')}
      ${tool('▴', () => (this.view = this.panned(0.5)), 'Move to higher frequencies')}
      ${tool('Reset', () => (this.view = undefined))} ${tool('Whole range', () => (this.view = this.whole))}
      ${tool('Save what is shown as CSV', this.saveCsv)}
    </div>`;
  }

  private renderDrawing(geometry: MapGeometry) {
    const { plot } = geometry;
    const width = plot.right - plot.left;
    const height = plot.bottom - plot.top;
    return html`<svg
      viewBox="0 0 ${Math.round(this.size.width)} ${plot.bottom + 40}"
      height=${plot.bottom + 40}
      aria-hidden="true"
    >
      <mask
        id="shades"
        maskUnits="userSpaceOnUse"
        x=${plot.left}
        y=${plot.top}
        width=${width}
        height=${height}
      >
        <image
          href=${this.image.href}
          x=${plot.left}
          y=${plot.top}
          width=${width}
          height=${height}
          preserveAspectRatio="none"
        ></image>
      </mask>
      <rect
        class="ink"
        mask="url(#shades)"
        x=${plot.left}
        y=${plot.top}
        width=${width}
        height=${height}
      ></rect>
      ${drawMapMarks(geometry, this.cursor)}
    </svg>`;
  }

  private zoomed(factor: number): SpectrumView {
    const view = this.shownView;
    const about = this.cursor?.frequency ?? view.from;
    const held = Math.max(view.from, Math.min(view.to, about));
    return zoomView(view, { factor, about: held, whole: this.whole });
  }

  private panned(share: number): SpectrumView {
    return panView(this.shownView, { share, whole: this.whole });
  }

  private onPointer(event: PointerEvent): void {
    const { geometry } = this;
    if (!geometry) return;
    const box = this.drawing.getBoundingClientRect();
    this.pointAt({
      time: geometry.timeAt(event.clientX - box.left),
      frequency: geometry.frequencyAt(event.clientY - box.top),
    });
  }

  private onPointerLeave(event: PointerEvent): void {
    if (event.pointerType === 'mouse' && !this.matches(':focus-within')) this.cursor = undefined;
  }

  private onKeydown(event: KeyboardEvent): void {
    const { grid } = this;
    if (!grid || event.ctrlKey || event.metaKey) return;
    const view = this.shownView;
    const fast = event.shiftKey ? 10 : 1;
    const rise = Math.max(grid.step, (view.to - view.from) / 100) * fast;
    const { time, frequency } = this.cursor ?? { time: grid.start, frequency: view.from };
    const moves: Readonly<Record<string, MapPlace>> = {
      ArrowRight: { time: time + fast * grid.timeStep, frequency },
      ArrowLeft: { time: time - fast * grid.timeStep, frequency },
      ArrowUp: { time, frequency: frequency + rise },
      ArrowDown: { time, frequency: frequency - rise },
      Home: { time: grid.start, frequency },
      End: { time: Infinity, frequency },
    };
    const views: Readonly<Record<string, SpectrumView | 'opening'>> = {
      '+': this.zoomed(0.5),
      '-': this.zoomed(2),
      '0': 'opening',
    };
    const [move, zoom] = [moves[event.key], views[event.key]];
    if (move) this.pointAt(move);
    if (zoom) this.view = zoom === 'opening' ? undefined : zoom;
    if (move ?? zoom) event.preventDefault();
  }

  private pointAt({ time, frequency }: MapPlace): void {
    const { grid, shownView: view } = this;
    if (!grid) return;
    const last = grid.start + (grid.columns - 1) * grid.timeStep;
    this.cursor = {
      time: Math.max(grid.start, Math.min(last, time)),
      frequency: Math.max(view.from, Math.min(view.to, frequency)),
    };
  }

  private readonly saveCsv = (): void => {
    if (this.grid)
      saveFile(`${this.name}.csv`, { text: mapCsv(this.grid, this.shownView), type: 'text/csv' });
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'map-chart': MapChart;
  }
}
