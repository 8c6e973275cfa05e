import { css, html, LitElement, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { shared } from '../styles/shared.js';
import { chartStyles } from './chart-styles.js';
import { layoutMode, type ModeFigure, type ModeMark } from './mode-geometry.js';
import { SizeController } from './size-controller.js';

/** How the line swings in one mode, drawn along its developed length. */
@customElement('mode-chart')
export class ModeChart extends LitElement {
  static override styles = [
    shared,
    chartStyles,
    css`
      :host {
        height: 230px;
      }
      .rest {
        stroke: var(--line);
        stroke-dasharray: 10 3 2 3;
      }
      .bow {
        fill: none;
        stroke: var(--ink);
        stroke-width: 2.25;
      }
      .mirrored {
        fill: none;
        stroke: var(--line);
        stroke-width: 1;
        stroke-dasharray: 4 3;
      }
      .support {
        fill: var(--brass);
        stroke: var(--ink);
      }
      .joint {
        fill: var(--sheet);
        stroke: var(--ink);
        stroke-width: 1.5;
      }
      .disc {
        fill: var(--steel);
        stroke: var(--ink);
      }
      .leader {
        stroke: var(--line-thin);
      }
      .named {
        font-weight: 600;
      }
    `,
  ];

  @property({ attribute: false }) shaft: ArrayLike<number> = [];
  @property({ attribute: false }) station: ArrayLike<number> = [];
  @property({ attribute: false }) displacement: ArrayLike<number> = [];
  @property({ attribute: false }) marks: readonly ModeMark[] = [];
  /** What the figure shows, for those who do not see it. */
  @property() label = '';

  private readonly size = new SizeController(this);

  protected override render() {
    const { size, shaft, station, displacement, marks } = this;
    if (size.width < 80 || station.length < 2) return nothing;
    const figure = layoutMode({ shaft, station, displacement, marks }, { width: size.width, height: 230 });
    return html`<svg viewBox="0 0 ${size.width} 230" height="230" role="img" aria-label=${this.label}>
      <line class="rest" x1=${figure.left - 12} x2=${figure.right + 12} y1=${figure.axis} y2=${figure.axis} />
      <path class="mirrored" d=${figure.mirrored} />
      <path class="bow" d=${figure.path} />
      ${this.drawMarks(figure)}
      <text
        class="named ${anchorOf(figure)}"
        x=${figure.largest.x}
        y=${figure.largest.y + (figure.largest.y < figure.axis ? -10 : 20)}
      >
        swings most here
      </text>
    </svg>`;
  }

  private drawMarks({ marks, axis }: ModeFigure) {
    return marks.map(
      ({ kind, x, y, name, labelRow }) => svg`
        <line class="leader" x1=${x} x2=${x} y1=${Math.max(axis, y)} y2=${190 + labelRow * 14} />
        ${
          kind === 'support'
            ? svg`<path class="support" d="M${x},${axis} l-7,11 h14 z M${x},${axis} l-7,-11 h14 z" />`
            : kind === 'joint'
              ? svg`<circle class="joint" cx=${x} cy=${y} r="5" />`
              : svg`<rect class="disc" x=${x - 3} y=${y - 14} width="6" height="28" rx="1" />`
        }
        <text class="soft anchor-middle" x=${x} y=${201 + labelRow * 14}>${name}</text>`,
    );
  }
}

function anchorOf({ largest, left, right }: ModeFigure): string {
  if (largest.x < left + 60) return 'anchor-start';
  return largest.x > right - 60 ? 'anchor-end' : 'anchor-middle';
}

declare global {
  interface HTMLElementTagNameMap {
    'mode-chart': ModeChart;
  }
}
