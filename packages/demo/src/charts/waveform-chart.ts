import { css, html, LitElement, nothing, svg } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { shared } from '../styles/shared.js';
import { chartStyles } from './chart-styles.js';
import { figureText } from './figure-text.js';
import { waveformGeometry } from './waveform-geometry.js';
import { SizeController } from './size-controller.js';
import type { Envelope, TimeSpan, WaveformGeometry } from './waveform-geometry.js';

/** A part of the recording was chosen; fired on a user's action only. */
export class StretchChosenEvent extends Event {
  static readonly type = 'stretch-chosen';
  constructor(readonly stretch: TimeSpan) {
    super(StretchChosenEvent.type, { bubbles: true, composed: true });
  }
}

/** A recording over time; dragging over it, or its two handles, choose the part that is analysed. */
@customElement('waveform-chart')
export class WaveformChart extends LitElement {
  static override styles = [
    shared,
    chartStyles,
    css`
      .chosen {
        fill: var(--accent-soft);
      }
      .edge {
        stroke: var(--accent);
        stroke-width: 2;
      }
      .figure {
        position: relative;
      }
      .handle {
        position: absolute;
        top: 0;
        width: var(--touch);
        margin-left: calc(var(--touch) / -2);
        cursor: ew-resize;
        touch-action: none;
      }
      .gap {
        fill: url(#hatch);
        stroke: var(--hatch);
      }
      .hatching {
        stroke: var(--hatch);
      }
    `,
  ];

  @property({ attribute: false }) envelope: Envelope | undefined;
  @property({ attribute: false }) stretch: TimeSpan = { from: 0, to: 0 };
  @property({ attribute: false }) gaps: readonly TimeSpan[] = [];
  @property() name = '';

  @state() private draft: TimeSpan | undefined;
  @query('.figure') private readonly figure!: HTMLElement;
  private readonly size = new SizeController(this);
  private anchor: number | undefined;
  private get shownPart(): TimeSpan {
    return this.draft ?? this.stretch;
  }

  private get geometry(): WaveformGeometry | undefined {
    const { envelope } = this;
    const width = Math.round(this.size.width);
    if (!envelope || width === 0) return undefined;
    return waveformGeometry(envelope, { width, height: 116, part: this.shownPart, gaps: this.gaps });
  }

  protected override render() {
    const { geometry } = this;
    return html`<div
      class="figure"
      @pointerdown=${this.onPointerDown}
      @pointermove=${this.onPointerMove}
      @pointerup=${this.onPointerUp}
      @pointercancel=${this.onPointerCancel}
    >
      ${geometry ? [this.renderDrawing(geometry), this.renderHandles()] : nothing}
    </div>`;
  }

  // The content security policy allows no style attributes, which is what styleMap starts with.
  protected override updated(): void {
    const { geometry } = this;
    if (!geometry) return;
    const { plot, part } = geometry;
    this.renderRoot.querySelectorAll<HTMLElement>('.handle').forEach((handle, index) => {
      handle.style.left = `${part.x + index * part.width}px`;
      handle.style.height = `${plot.bottom}px`;
    });
  }

  private renderDrawing(geometry: WaveformGeometry) {
    const { plot, part } = geometry;
    const height = plot.bottom + 36;
    const label = `${this.name} over ${figureText(this.envelope?.duration ?? 0)} seconds`;
    return html`<svg
      viewBox="0 0 ${Math.round(this.size.width)} ${height}"
      height=${height}
      role="img"
      aria-label=${label}
    >
      <pattern id="hatch" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <line class="hatching" x1="0" x2="0" y1="0" y2="6" stroke-width="2"></line>
      </pattern>
      <rect
        class="chosen"
        x=${part.x}
        y=${plot.top}
        width=${part.width}
        height=${plot.bottom - plot.top}
      ></rect>
      <path class="area" d=${geometry.path}></path>
      ${geometry.gaps.map(
        (gap) =>
          svg`<rect class="gap" x=${gap.x} y=${plot.top} width=${gap.width} height=${plot.bottom - plot.top}></rect>`,
      )}
      ${[part.x, part.x + part.width].map(
        (x) => svg`<line class="edge" x1=${x} x2=${x} y1=${plot.top} y2=${plot.bottom}></line>`,
      )}
      <line class="axis" x1=${plot.left} x2=${plot.right} y1=${plot.bottom} y2=${plot.bottom}></line>
      ${geometry.timeTicks.map(
        (tick) =>
          svg`<text class="anchor-middle soft" x=${tick.at} y=${plot.bottom + 15}>${tick.label}</text>`,
      )}
      <text class="anchor-middle" x=${(plot.left + plot.right) / 2} y=${plot.bottom + 31}>Time in s</text>
    </svg>`;
  }

  private renderHandles() {
    return (['from', 'to'] as const).map((end) => {
      const time = this.shownPart[end];
      return html`<div
        class="handle"
        role="slider"
        tabindex="0"
        aria-label=${end === 'from' ? 'Start of the part' : 'End of the part'}
        aria-valuemin="0"
        aria-valuemax=${this.envelope?.duration ?? 0}
        aria-valuenow=${time}
        aria-valuetext=${`${figureText(time)} seconds`}
        @keydown=${(event: KeyboardEvent) => {
          this.onKeydown(event, end);
        }}
        @pointerdown=${(event: PointerEvent) => {
          this.onHandleDown(event, end);
        }}
      ></div>`;
    });
  }

  private timeOf(event: PointerEvent): number {
    const x = event.clientX - this.figure.getBoundingClientRect().left;
    return this.geometry?.timeAt(x) ?? 0;
  }

  private onPointerDown(event: PointerEvent): void {
    if (event.button !== 0) return;
    this.anchor = this.timeOf(event);
    this.figure.setPointerCapture(event.pointerId);
  }

  private onHandleDown(event: PointerEvent, end: keyof TimeSpan): void {
    event.stopPropagation();
    this.anchor = end === 'from' ? this.stretch.to : this.stretch.from;
    this.figure.setPointerCapture(event.pointerId);
  }

  private onPointerMove(event: PointerEvent): void {
    if (this.anchor === undefined) return;
    const [from = 0, to = 0] = [this.anchor, this.timeOf(event)].sort((a, b) => a - b);
    this.draft = { from, to };
  }

  private onPointerUp(): void {
    const { draft, shortest } = this;
    this.anchor = undefined;
    this.draft = undefined;
    if (draft && draft.to - draft.from >= shortest) this.dispatchEvent(new StretchChosenEvent(draft));
  }

  private onPointerCancel(): void {
    this.anchor = undefined;
    this.draft = undefined;
  }

  private onKeydown(event: KeyboardEvent, end: keyof TimeSpan): void {
    const duration = this.envelope?.duration ?? 0;
    const step = (duration / 100) * (event.shiftKey ? 10 : 1);
    const moves: Record<string, number> = {
      ArrowLeft: -step,
      ArrowDown: -step,
      ArrowRight: step,
      ArrowUp: step,
      PageDown: -10 * step,
      PageUp: 10 * step,
      Home: -duration,
      End: duration,
    };
    const move = moves[event.key];
    if (move === undefined) return;
    event.preventDefault();
    this.dispatchEvent(new StretchChosenEvent(this.moved(end, move)));
  }

  private moved(end: keyof TimeSpan, move: number): TimeSpan {
    const { stretch: part, shortest } = this;
    const duration = this.envelope?.duration ?? 0;
    return end === 'from'
      ? { from: Math.max(0, Math.min(part.to - shortest, part.from + move)), to: part.to }
      : { from: part.from, to: Math.min(duration, Math.max(part.from + shortest, part.to + move)) };
  }

  /** s; a part shorter than this is a slip of the finger. */
  private get shortest(): number {
    return (this.envelope?.duration ?? 0) / 200;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'waveform-chart': WaveformChart;
  }
  interface HTMLElementEventMap {
    'stretch-chosen': StretchChosenEvent;
  }
}
