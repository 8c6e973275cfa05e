import { css, html, LitElement, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { shared } from '../styles/shared.js';
import { chartStyles } from './chart-styles.js';
import { ReadOutController } from './read-out-controller.js';
import { SizeController } from './size-controller.js';
import { layoutSpeedChart, valueAt, type SpeedChartInput, type SpeedFigure } from './speed-chart-geometry.js';

const HEIGHT = 340;

/** A figure over shaft speed, read out by pointer or arrow keys. */
@customElement('speed-chart')
export class SpeedChart extends LitElement {
  static override styles = [
    shared,
    chartStyles,
    css`
      :host {
        height: 340px;
        position: relative;
      }
      .figure {
        position: absolute;
        inset: 0;
      }
      .forward,
      .backward,
      .order,
      .reach {
        fill: none;
        stroke: var(--ink);
        stroke-width: 2;
        stroke-linejoin: round;
      }
      .backward {
        stroke-width: 1.5;
        stroke-dasharray: 7 4;
      }
      .order {
        stroke: var(--line);
        stroke-width: 1;
      }
      .point {
        fill: var(--sheet);
        stroke: var(--hatch);
        stroke-width: 2;
      }
      .wanted {
        stroke: var(--accent);
        stroke-width: 1.75;
      }
      .limit {
        stroke: var(--hatch);
        stroke-width: 1.75;
        stroke-dasharray: 2 3;
      }
      .wall {
        stroke: var(--hatch);
        stroke-width: 1.5;
      }
      .hatching {
        stroke: var(--hatch);
        stroke-width: 1.2;
        opacity: 0.55;
      }
      .named {
        font-weight: 600;
      }
      .on-lines {
        paint-order: stroke;
        stroke: var(--sheet);
        stroke-width: 4px;
        stroke-linejoin: round;
      }
      .cursor line {
        stroke: var(--accent);
        stroke-dasharray: 3 3;
      }
    `,
  ];

  @property({ attribute: false }) input: SpeedChartInput | undefined;
  /** What the upward axis shows. */
  @property() upward = '';
  /** What is read out, for those who do not see the figure. */
  @property() label = '';
  @property({ attribute: false }) writeSpeed: (speed: number) => string = String;
  @property({ attribute: false }) writeValue: (value: number) => string = String;

  private readonly size = new SizeController(this);
  private readonly readOut = new ReadOutController(this, (x) => this.layout?.share(x) ?? 0);
  private layout: SpeedFigure | undefined;

  protected override render() {
    const { size, input, readOut } = this;
    if (!input || size.width < 120) return nothing;
    const figure = layoutSpeedChart(input, { width: size.width, height: HEIGHT });
    this.layout = figure;
    const speed = (readOut.share ?? 0) * input.top;
    return html`<div
      class="figure"
      role="slider"
      tabindex="0"
      aria-label=${this.label}
      aria-valuemin="0"
      aria-valuemax=${Math.round(input.top)}
      aria-valuenow=${Math.round(speed)}
      aria-valuetext=${`at ${this.writeSpeed(speed)}: ${this.words(speed)}`}
      @pointermove=${readOut.onMove}
      @pointerdown=${readOut.onMove}
      @keydown=${readOut.onKeydown}
    >
      <svg viewBox="0 0 ${size.width} ${HEIGHT}" height=${HEIGHT} aria-hidden="true">
        ${this.drawAxes(figure)} ${this.drawWall(figure, input)} ${drawLines(figure)} ${drawMarks(figure)}
        ${drawPoints(figure)} ${readOut.share === undefined ? nothing : this.drawCursor(figure, speed)}
      </svg>
    </div>`;
  }

  private words(speed: number): string {
    const lines = this.input?.lines ?? [];
    return lines
      .filter(({ kind }) => kind !== 'order')
      .map((line) => `${line.name} ${this.writeValue(valueAt(line, speed))}`)
      .join(', ');
  }

  private drawAxes({ xTicks, yTicks, left, right, base, ceiling }: SpeedFigure) {
    return svg`
      ${yTicks.map(
        ({ y, value }) => svg`<line class="grid" x1=${left} x2=${right} y1=${y} y2=${y} />
          <text class="soft anchor-end" x=${left - 6} y=${y + 4}>${plain(value)}</text>`,
      )}
      <text class="soft" x="0" y=${ceiling - 12}>${this.upward}</text>
      <line class="axis" x1=${left} x2=${right} y1=${base} y2=${base} />
      ${xTicks.map(
        ({ x, value }) => svg`<line class="axis" x1=${x} x2=${x} y1=${base} y2=${base + 5} />
          <text class="soft anchor-middle" x=${x} y=${base + 18}>${plain(value)}</text>`,
      )}
      <text class="soft anchor-end" x=${right} y=${base + 33}>shaft speed, rpm</text>`;
  }

  private drawWall({ wall, left, right, ceiling }: SpeedFigure, { wall: said }: SpeedChartInput) {
    if (wall === undefined || !said) return nothing;
    return svg`<defs>
        <pattern id="wall" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <line class="hatching" x1="0" x2="0" y1="0" y2="7" />
        </pattern>
      </defs>
      <rect x=${left} y=${ceiling} width=${right - left} height=${wall - ceiling} fill="url(#wall)" />
      <line class="wall" x1=${left} x2=${right} y1=${wall} y2=${wall} />
      <text class="named on-lines" x=${left + 8} y=${wall + 16}>${said.name}</text>`;
  }

  private drawCursor({ x, y, base, ceiling, left, right }: SpeedFigure, speed: number) {
    const px = x(speed);
    const end = px > (left + right) / 2;
    const lines = (this.input?.lines ?? []).filter(({ kind }) => kind !== 'order');
    return svg`<g class="cursor" data-passing>
      <line x1=${px} x2=${px} y1=${ceiling} y2=${base} />
      ${lines.map((line) => {
        const value = valueAt(line, speed);
        const py = Math.max(ceiling, y(value));
        return svg`<circle class="point" cx=${px} cy=${py} r="3" />
          <text class="on-lines ${end ? 'anchor-end' : 'anchor-start'}" x=${px + (end ? -7 : 7)} y=${py - 5}>${this.writeValue(value)}</text>`;
      })}
      <text class="named on-lines ${end ? 'anchor-end' : 'anchor-start'}" x=${px + (end ? -7 : 7)} y=${base - 6}>${this.writeSpeed(speed)}</text>
    </g>`;
  }
}

function drawLines({ lines, left, right, base, ceiling }: SpeedFigure) {
  return svg`<clipPath id="room"><rect x=${left} y=${ceiling} width=${right - left} height=${base - ceiling} /></clipPath>
    <g clip-path="url(#room)">${lines.map(({ kind, path }) => svg`<path class=${kind} d=${path} />`)}</g>
    ${lines.map(
      ({ label, kind }) =>
        svg`<text class="${kind === 'order' ? 'soft' : ''} anchor-${label.anchor}" x=${label.x} y=${label.y}>${label.text}</text>`,
    )}`;
}

function drawMarks({ marks, base, ceiling }: SpeedFigure) {
  return marks.map(
    ({ px, name, kind, anchor }, index) => svg`
      <line class=${kind} x1=${px} x2=${px} y1=${ceiling} y2=${base} />
      <text class="named on-lines anchor-${anchor}" x=${px + (anchor === 'end' ? -6 : 6)} y=${base - 22 - 15 * index}>${name}</text>`,
  );
}

function drawPoints({ points }: SpeedFigure) {
  return points.map(
    ({ px, py, name, label }) => svg`
      <circle class="point" cx=${px} cy=${py} r="4.5" />
      ${label ? svg`<text class="on-lines anchor-${label.anchor}" x=${label.x} y=${label.y}>${name}</text>` : nothing}`,
  );
}

function plain(value: number): string {
  return String(value).replace(/\B(?=(\d{3})+$)/g, '\u202f');
}

declare global {
  interface HTMLElementTagNameMap {
    'speed-chart': SpeedChart;
  }
}
