import { css, html, LitElement, nothing, svg } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { shared } from '../styles/shared.js';
import { TurnReadEvent } from './chart-events.js';
import { chartStyles } from './chart-styles.js';
import { SizeController } from './size-controller.js';
import { layoutTurn, type TurnFigure } from './turn-geometry.js';

/** Speed of the propeller over that of the motor through one turn, read out by pointer or arrow keys. */
@customElement('turn-chart')
export class TurnChart extends LitElement {
  static override styles = [
    shared,
    chartStyles,
    css`
      :host {
        height: 260px;
        position: relative;
      }
      .even {
        stroke: var(--line);
        stroke-dasharray: 10 3 2 3;
      }
      .curve {
        fill: none;
        stroke: var(--ink);
        stroke-width: 2;
      }
      .cursor line {
        stroke: var(--accent);
      }
      .cursor circle {
        fill: var(--accent);
        stroke: var(--paper);
        stroke-width: 1.5;
      }
      .named {
        font-weight: 600;
      }
      .figure {
        position: absolute;
        inset: 0;
      }
    `,
  ];

  /** Speed ratio at even steps from 0 to a whole turn of the motor. */
  @property({ attribute: false }) values: ArrayLike<number> = [];
  /** How a ratio is written. */
  @property({ attribute: false }) write: (value: number) => string = (value) => value.toFixed(3);
  /** Share of the turn that is read out; undefined until someone asks. */
  @state() private cursor: number | undefined;

  private readonly size = new SizeController(this);
  private layout: TurnFigure | undefined;

  protected override render() {
    const { size, values } = this;
    if (size.width < 80 || values.length < 2) return nothing;
    const figure = layoutTurn({ values }, { width: size.width, height: 260 });
    this.layout = figure;
    const share = this.cursor ?? 0;
    const { value } = figure.at(share);
    const degrees = Math.round(share * 360);
    return html`<div
      class="figure"
      role="slider"
      tabindex="0"
      aria-label="Angle of the motor shaft"
      aria-valuemin="0"
      aria-valuemax="360"
      aria-valuenow=${degrees}
      aria-valuetext=${`at ${degrees}° the propeller turns ${this.write(value)} times as fast as the motor`}
      @pointermove=${this.onMove}
      @pointerdown=${this.onMove}
      @keydown=${this.onKeydown}
    >
      <svg viewBox="0 0 ${size.width} 260" height="260" aria-hidden="true">
        ${this.drawAxes(figure)}
        <path class="curve" d=${figure.path} />
        ${this.drawExtremes(figure)} ${this.cursor === undefined ? nothing : this.drawCursor(figure, share)}
      </svg>
    </div>`;
  }

  private drawAxes({ xTicks, yTicks, left, right, base, even }: TurnFigure) {
    return svg`
      ${yTicks.map(
        ({ y, value }) => svg`<line class="grid" x1=${left} x2=${right} y1=${y} y2=${y} />
          <text class="soft anchor-end" x=${left - 6} y=${y + 4}>${this.write(value)}</text>`,
      )}
      <line class="even" x1=${left} x2=${right} y1=${even} y2=${even} />
      <line class="axis" x1=${left} x2=${right} y1=${base} y2=${base} />
      ${xTicks.map(
        ({ x, degrees }) => svg`<line class="axis" x1=${x} x2=${x} y1=${base} y2=${base + 5} />
          <text class="soft anchor-middle" x=${x} y=${base + 18}>${degrees}°</text>`,
      )}
      <text class="soft anchor-end" x=${right} y=${base + 32}>angle of the motor shaft</text>`;
  }

  private drawExtremes({ highest, lowest }: TurnFigure) {
    if (highest.value - lowest.value < 1e-6) return nothing;
    return svg`
      <text class="named anchor-middle" x=${Math.max(90, highest.x)} y=${highest.y - 7}>fastest ${this.write(highest.value)}</text>
      <text class="named anchor-middle" x=${Math.max(90, lowest.x)} y=${lowest.y + 16}>slowest ${this.write(lowest.value)}</text>`;
  }

  private drawCursor(figure: TurnFigure, share: number) {
    const { x, y, value } = figure.at(share);
    const degrees = Math.round(share * 360);
    const left = x > (figure.left + figure.right) / 2;
    return svg`<g class="cursor" data-passing>
      <line x1=${x} x2=${x} y1=${figure.top - 6} y2=${figure.base} />
      <circle cx=${x} cy=${y} r="5" />
      <text class=${left ? 'anchor-end' : 'anchor-start'} x=${x + (left ? -8 : 8)} y="12">${degrees}°: ${this.write(value)}</text>
    </g>`;
  }

  private onMove(event: PointerEvent): void {
    if (!this.layout) return;
    this.read(this.layout.share(event.clientX - this.getBoundingClientRect().left));
  }

  private onKeydown(event: KeyboardEvent): void {
    const step = (event.shiftKey ? 15 : 1) / 360;
    const here = this.cursor ?? 0;
    const moves: Readonly<Record<string, number>> = {
      ArrowRight: here + step,
      ArrowUp: here + step,
      ArrowLeft: here - step,
      ArrowDown: here - step,
      Home: 0,
      End: 1,
    };
    const next = moves[event.key];
    if (next === undefined) return;
    event.preventDefault();
    this.read(Math.min(1, Math.max(0, next)));
  }

  private read(share: number): void {
    this.cursor = share;
    this.dispatchEvent(new TurnReadEvent(2 * Math.PI * share));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'turn-chart': TurnChart;
  }
}
