import { css, html, LitElement, nothing, svg, type SVGTemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { shared } from '../styles/shared.js';
import { balanceCircles, type CircleReadings, type DrawnCircle } from './balance-geometry.js';
import { chartStyles } from './chart-styles.js';
import { SizeController } from './size-controller.js';

const MOST = 420;
/** Room for the names about the circles. */
const EDGE = 22;

/** The four circles of a balancing without phase, and where they meet. Angles run clockwise from the top. */
@customElement('balance-circles')
export class BalanceCircles extends LitElement {
  static override styles = [
    shared,
    chartStyles,
    css`
      svg {
        width: auto;
        max-width: 100%;
      }
      .base {
        fill: none;
        stroke: var(--ink);
        stroke-width: 1.5;
      }
      .run {
        fill: none;
        stroke: var(--line);
        stroke-width: 1.5;
        stroke-dasharray: 6 4;
      }
      .middle {
        fill: var(--ink);
      }
      .arrow {
        stroke: var(--accent);
        stroke-width: 2.5;
      }
      .onward {
        stroke: var(--accent);
        stroke-width: 1.5;
        stroke-dasharray: 2 3;
      }
      .meeting {
        fill: var(--accent);
        stroke: var(--sheet);
        stroke-width: 1.5;
      }
      .mass {
        fill: var(--ink);
        stroke: var(--sheet);
        stroke-width: 1.5;
      }
      text {
        paint-order: stroke;
        stroke: var(--sheet);
        stroke-width: 3px;
        stroke-linejoin: round;
      }
      text.name {
        font-weight: 600;
      }
    `,
  ];

  @property({ attribute: false }) readings: CircleReadings | undefined;
  /** One for the run as found, then one for each circle. */
  @property({ attribute: false }) names: readonly string[] = [];
  /** What stands at the correction. */
  @property() answer = '';
  @property() label = '';

  private readonly size = new SizeController(this);

  protected override render() {
    const { readings } = this;
    const width = Math.min(this.size.width, MOST);
    if (!readings || width < 80) return nothing;
    const drawing = balanceCircles(readings, { width, edge: EDGE, most: MOST });
    const { base, circles, meeting, correction, middle, height } = drawing;
    const side = correction.x >= 0 ? 'anchor-start' : 'anchor-end';
    return html`<svg
      viewBox="${-middle.x} ${-middle.y} ${width} ${height}"
      width=${width}
      height=${height}
      role="img"
      aria-label=${this.label}
    >
      ${circles.map((circle) => drawCircle(circle))}
      <circle class="base" r=${base} />
      <circle class="middle" r="2.5" />
      <line class="onward" x1=${meeting.x} y1=${meeting.y} x2=${correction.x} y2=${correction.y} />
      <line class="arrow" x1="0" y1="0" x2=${meeting.x} y2=${meeting.y} />
      <circle class="meeting" cx=${meeting.x} cy=${meeting.y} r="5" />
      <circle class="mass" cx=${correction.x} cy=${correction.y} r="7" />
      <text class="anchor-middle soft" y=${base - 6}>${this.names[0] ?? ''}</text>
      ${circles.map((circle, index) => drawName(circle, this.names[index + 1] ?? ''))}
      <text class="name ${side}" x=${correction.x + Math.sign(correction.x || 1) * 11} y=${correction.y - 8}>
        ${this.answer}
      </text>
    </svg>`;
  }
}

function drawCircle({ centre, radius }: DrawnCircle): SVGTemplateResult {
  return svg`<circle class="run" cx=${centre.x} cy=${centre.y} r=${radius} />
    <circle class="middle" cx=${centre.x} cy=${centre.y} r="3" />`;
}

function drawName({ centre, label }: DrawnCircle, name: string): SVGTemplateResult {
  const down = label.y > 0 ? 1 : -1;
  const side = Math.abs(centre.x) < 20 ? 'middle' : centre.x > 0 ? 'end' : 'start';
  return svg`<text class="soft anchor-${side}" x=${label.x} y=${label.y + (down > 0 ? 14 : -6)}>${name}</text>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'balance-circles': BalanceCircles;
  }
}
