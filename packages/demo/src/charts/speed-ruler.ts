import { html, LitElement, nothing, svg, type SVGTemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { place } from './place.js';
import { shared } from '../styles/shared.js';
import { SpeedMovedEvent } from './chart-events.js';
import { rulerStyles } from './ruler-styles.js';
import { SizeController } from './size-controller.js';
import {
  layoutRuler,
  niceTop,
  type DrawnBand,
  type DrawnLevel,
  type Ruler,
  type RulerBand,
  type RulerLevel,
} from './speed-ruler-geometry.js';

/** One axis of shaft speed: what is wanted, what is allowed, what to avoid, and what was measured. */
@customElement('speed-ruler')
export class SpeedRuler extends LitElement {
  static override styles = [shared, rulerStyles];

  @property({ attribute: false }) bands: readonly RulerBand[] = [];
  @property({ attribute: false }) levels: readonly RulerLevel[] = [];
  /** All speeds are in this unit. */
  @property() unit = 'rpm';
  @property({ type: Number }) wanted = 0;
  @property({ type: Number }) limit = Infinity;
  /** What stands at the limit. */
  @property() limitLabel = '';
  /** Fastest the motor can turn, where it is known. */
  @property({ type: Number }) top: number | undefined;
  /** What more is said of the wanted speed. */
  @property() wantedNote = '';
  /** How a speed is written. */
  @property({ attribute: false }) write: (speed: number) => string = String;

  private readonly size = new SizeController(this);
  private dragging = false;
  private ruler: Ruler | undefined;

  protected override render() {
    const { size, bands, levels, wanted, limit } = this;
    if (size.width < 60 || size.height < 40) return nothing;
    const ruler = layoutRuler({ bands, levels, wanted, limit, top: this.axisTop() }, size);
    this.ruler = ruler;
    return html`
      <svg
        width=${size.width}
        height=${size.height}
        aria-hidden="true"
        @pointerdown=${this.onPress}
        @pointermove=${this.onMove}
        @pointerup=${this.onRelease}
        @pointercancel=${this.onRelease}
      >
        <defs>
          <pattern
            id="hatch"
            width="6"
            height="6"
            patternUnits="userSpaceOnUse"
            patternTransform="rotate(45)"
          >
            <line class="hatching" x1="0" x2="0" y1="0" y2="6" />
          </pattern>
        </defs>
        ${this.drawLanes(ruler)} ${ruler.bands.map((band) => this.drawBand(band))} ${this.drawAxis(ruler)}
        ${this.drawLimit(ruler)} ${ruler.bands.map((band) => this.drawName(band))} ${this.drawLevels(ruler)}
        ${this.drawWanted(ruler)}
      </svg>
      ${this.renderHandle(ruler)} ${this.renderWords()}
    `;
  }

  private axisTop(): number {
    return niceTop(Math.max(this.top ?? 1.5 * this.wanted, this.wanted * 1.05));
  }

  private renderHandle(ruler: Ruler) {
    return html`<div
      class="handle"
      role="slider"
      tabindex="0"
      aria-label="Wanted speed"
      aria-valuemin="0"
      aria-valuemax=${Math.round(this.axisTop())}
      aria-valuenow=${Math.round(this.wanted)}
      aria-valuetext=${`${this.write(this.wanted)} ${this.unit}${this.wantedNote ? `, ${this.wantedNote}` : ''}`}
      ${place({ left: `${ruler.wanted - 22}px` })}
      @keydown=${this.onKeydown}
      @pointerdown=${this.onPress}
      @pointermove=${this.onMove}
      @pointerup=${this.onRelease}
      @pointercancel=${this.onRelease}
    ></div>`;
  }

  private drawLanes({ lanes }: Ruler): SVGTemplateResult[] {
    return lanes.map(
      ({ order, y, height }) => svg`
        <line class="lane" x1="34" x2=${this.size.width - 16} y1=${y + height} y2=${y + height} />
        <text class="lane-name" x="28" y=${y + height / 2 + 4} text-anchor="end">${order}×</text>`,
    );
  }

  private drawBand(band: DrawnBand): SVGTemplateResult {
    const { x, y, width, height, lines } = band;
    return svg`<g class="band">
      <rect class="ground" x=${x} y=${y} width=${width} height=${height} />
      <rect class="hatched" x=${x} y=${y} width=${width} height=${height} fill="url(#hatch)" ><title>${this.bandWords(band)}</title></rect>
      ${lines.map((line) => svg`<line class="critical" x1=${line} x2=${line} y1=${y} y2=${y + height} />`)}
    </g>`;
  }

  private drawName({ name, y, height }: DrawnBand) {
    if (!name) return nothing;
    return svg`<text class="band-name" x=${name.x} y=${y + height / 2 + 4}>${name.text}</text>`;
  }

  private drawAxis({ ticks, axis }: Ruler): SVGTemplateResult {
    const { width } = this.size;
    return svg`
      <line class="axis" x1="34" x2=${width - 16} y1=${axis} y2=${axis} />
      ${ticks.map(
        ({ x, value, major }) => svg`
          <line class="tick" x1=${x} x2=${x} y1=${axis} y2=${axis + (major ? 6 : 3)} />
          ${major ? svg`<text class="tick-name" x=${x} y=${axis + 17} text-anchor="middle">${this.write(value)}</text>` : nothing}`,
      )}
      <text class="unit" x="2" y=${axis + 17}>${this.unit}</text>`;
  }

  private drawLimit({ limit, limitBeyond, axis }: Ruler) {
    if (!this.limitLabel) return nothing;
    if (limitBeyond) {
      return svg`<g class="limit">
        <path d="M${limit},4 l7,5 l-7,5 z" />
        <text x=${limit - 6} y="13" text-anchor="end">${this.limitLabel}, off this scale</text>
      </g>`;
    }
    const side = limit < this.size.width / 2 ? 1 : -1;
    return svg`<g class="limit">
      <line x1=${limit} x2=${limit} y1="2" y2=${axis} />
      <path d="M${limit},2 h${side * 7} l${side * -3},4 l${side * 3},4 h${side * -7} z" />
      <text x=${limit + side * 12} y="13" text-anchor=${side > 0 ? 'start' : 'end'}>${this.limitLabel}</text>
    </g>`;
  }

  private drawLevels({ levels, lanes }: Ruler): SVGTemplateResult[] {
    const [top] = lanes;
    const named = levels.findLast(({ order, seen }) => seen && order === top?.order);
    return levels.map(
      (level) => svg`<path class=${level.seen ? 'level' : 'level unseen-level'} d=${diamond(level)}>
          <title>${this.levelWords(level)}</title>
        </path>
        ${level === named ? svg`<text class="band-name" x=${level.x + 9} y=${level.y + 4}>measured</text>` : nothing}`,
    );
  }

  private levelWords({ order, speed, amplitude, unit, seen }: RulerLevel): string {
    const level = seen ? `${amplitude.toPrecision(3)} ${unit}` : 'not above the noise';
    return `measured ${order}× at ${this.write(speed)} ${this.unit}: ${level}`;
  }

  private bandWords({ label, from, to, note }: RulerBand): string {
    const more = note ? `, ${note}` : '';
    return `${label}: ${this.write(from)} to ${this.write(to)} ${this.unit}${more}`;
  }

  private drawWanted({ wanted, axis }: Ruler): SVGTemplateResult {
    return svg`<g class="wanted">
      <line x1=${wanted} x2=${wanted} y1="16" y2=${axis} />
      <path d="M${wanted},${axis - 1} l-7,11 h14 z" />
    </g>`;
  }

  // The drawing is hidden from screen readers; this is what it says.
  private renderWords() {
    if (this.bands.length === 0 && this.levels.length === 0) return nothing;
    return html`<ul class="unseen" aria-label="Speeds to avoid, and measured levels">
      ${this.bands.map((band) => html`<li>${this.bandWords(band)}</li>`)}
      ${this.levels.map((level) => html`<li>${this.levelWords(level)}</li>`)}
    </ul>`;
  }

  private onPress(event: PointerEvent): void {
    if (event.button !== 0) return;
    this.dragging = true;
    (event.currentTarget as Element).setPointerCapture(event.pointerId);
    this.move(event, 'moving');
  }

  private onMove(event: PointerEvent): void {
    if (this.dragging) this.move(event, 'moving');
  }

  private onRelease(event: PointerEvent): void {
    if (!this.dragging) return;
    this.dragging = false;
    this.move(event, 'settled');
  }

  private move(event: PointerEvent, phase: 'moving' | 'settled'): void {
    if (!this.ruler) return;
    const step = Math.max(10, 10 ** Math.floor(Math.log10(this.axisTop() / 200)));
    const speed =
      Math.round(this.ruler.speed(event.clientX - this.getBoundingClientRect().left) / step) * step;
    this.dispatchEvent(new SpeedMovedEvent(Math.max(step, speed), phase));
  }

  private onKeydown(event: KeyboardEvent): void {
    const step = event.shiftKey ? 500 : 50;
    const moves: Readonly<Record<string, number>> = {
      ArrowRight: this.wanted + step,
      ArrowUp: this.wanted + step,
      ArrowLeft: this.wanted - step,
      ArrowDown: this.wanted - step,
      PageUp: this.wanted + 500,
      PageDown: this.wanted - 500,
      Home: step,
      End: this.axisTop(),
    };
    const speed = moves[event.key];
    if (speed === undefined) return;
    event.preventDefault();
    this.dispatchEvent(new SpeedMovedEvent(Math.min(this.axisTop(), Math.max(step, speed)), 'settled'));
  }
}

function diamond({ x, y, radius }: DrawnLevel): string {
  return `M${x},${y - radius} l${radius},${radius} l${-radius},${radius} l${-radius},${-radius} z`;
}

declare global {
  interface HTMLElementTagNameMap {
    'speed-ruler': SpeedRuler;
  }
}
