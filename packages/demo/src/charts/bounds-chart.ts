import { css, html, LitElement, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { shared } from '../styles/shared.js';
import { BOUND_FOOT, BOUND_ROW, layoutBounds, type BoundRow, type BoundsFigure } from './bounds-geometry.js';
import { chartStyles } from './chart-styles.js';
import { SizeController } from './size-controller.js';

/** Each critical speed as a range: bushes that let the shaft tilt, as they likely are, and bushes that hold its direction. */
@customElement('bounds-chart')
export class BoundsChart extends LitElement {
  static override styles = [
    shared,
    chartStyles,
    css`
      .range {
        fill: var(--steel);
        stroke: var(--ink);
      }
      .estimate {
        fill: var(--ink);
        stroke: var(--sheet);
        stroke-width: 1.5;
      }
      .wanted {
        stroke: var(--accent);
        stroke-width: 1.75;
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
    `,
  ];

  @property({ attribute: false }) rows: readonly BoundRow[] = [];
  @property({ type: Number }) wanted = 0;
  @property({ attribute: false }) write: (speed: number) => string = String;
  /** What the figure shows, for those who do not see it. */
  @property() label = '';

  private readonly size = new SizeController(this);

  protected override render() {
    const { size, rows, wanted } = this;
    if (size.width < 120 || rows.length === 0) return nothing;
    const figure = layoutBounds({ rows, wanted }, size.width);
    const height = rows.length * BOUND_ROW + 14 + BOUND_FOOT;
    return html`<svg
      viewBox="0 0 ${size.width} ${height}"
      height=${height}
      role="img"
      aria-label=${this.label}
    >
      ${this.drawAxis(figure)} ${figure.rows.map((row, index) => this.drawRow(row, rows[index]))}
    </svg>`;
  }

  private drawAxis({ ticks, left, right, base, wanted }: BoundsFigure) {
    const end = wanted > (left + right) / 2;
    return svg`<line class="axis" x1=${left} x2=${right} y1=${base} y2=${base} />
      ${ticks.map(
        ({ x, value }) => svg`<line class="axis" x1=${x} x2=${x} y1=${base} y2=${base + 5} />
          <text class="soft anchor-middle" x=${x} y=${base + 18}>${this.write(value)}</text>`,
      )}
      <text class="soft anchor-end" x=${right} y=${base + 34}>shaft speed, rpm</text>
      <line class="wanted" x1=${wanted} x2=${wanted} y1="6" y2=${base} />
      <text class="on-lines ${end ? 'anchor-end' : 'anchor-start'}" x=${wanted + (end ? -5 : 5)} y=${base - 4}>wanted ${this.write(this.wanted)}</text>`;
  }

  private drawRow({ name, y, from, to, mark }: BoundsFigure['rows'][number], row: BoundRow | undefined) {
    if (!row) return nothing;
    const { lower, estimate, upper } = row;
    return svg`<text class="named on-lines" x=${Math.min(from, this.size.width - 240)} y=${y - 8}>${name}: ${this.write(lower)} to ${this.write(upper)}, likely ${this.write(estimate)}</text>
      <rect class="range" x=${from} y=${y} width=${Math.max(2, to - from)} height="13" />
      <path class="estimate" d="M${mark},${y - 3} l7,9.5 l-7,9.5 l-7,-9.5 z" />`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bounds-chart': BoundsChart;
  }
}
