import { css, html, LitElement, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { shared } from '../styles/shared.js';
import { chartStyles } from './chart-styles.js';
import { layoutMeasures, type MeasureFigure, type MeasureView } from './measure-geometry.js';
import { SizeController } from './size-controller.js';

const HEIGHT = 150;

/** What is measured of the two axes: stations along the keel, heights above its line, offsets from the centre line. */
@customElement('measure-diagram')
export class MeasureDiagram extends LitElement {
  static override styles = [
    shared,
    chartStyles,
    css`
      .reference {
        stroke: var(--ink);
        stroke-width: 1.5;
      }
      .centre {
        stroke: var(--line);
        stroke-dasharray: 12 3 2 3;
      }
      .shaft {
        stroke: var(--ink);
        stroke-width: 2.5;
      }
      .measured {
        stroke: var(--accent);
        stroke-width: 1.25;
      }
      .point {
        fill: var(--sheet);
        stroke: var(--accent);
        stroke-width: 1.75;
      }
      .joint {
        fill: none;
        stroke: var(--ink);
        stroke-width: 1.5;
      }
    `,
  ];

  @property({ attribute: false }) view: MeasureView | undefined;
  /** Which view this is. */
  @property() kind: 'side' | 'plan' = 'side';
  @property() label = '';

  private readonly size = new SizeController(this);

  protected override render() {
    const { size, view } = this;
    if (!view || size.width < 80) return nothing;
    const figure = layoutMeasures(view, { width: size.width, height: HEIGHT });
    const side = this.kind === 'side';
    return html`<svg
      viewBox="0 0 ${size.width} ${HEIGHT}"
      height=${HEIGHT}
      role="img"
      aria-label=${this.label}
    >
      <text class="soft" x=${figure.left} y=${HEIGHT - 4}>${side ? 'side view' : 'from above'}</text>
      <line
        class=${side ? 'reference' : 'reference centre'}
        x1=${figure.left}
        x2=${figure.right}
        y1=${figure.base}
        y2=${figure.base}
      />
      <text class="soft anchor-end" x=${figure.right} y=${Math.min(figure.base + 16, HEIGHT - 4)}>
        ${side ? 'keel line' : 'centre line'}, aft →
      </text>
      ${figure.axes.map(
        ({ x1, y1, x2, y2 }) => svg`<line class="shaft" x1=${x1} y1=${y1} x2=${x2} y2=${y2} />`,
      )}
      ${figure.points.map((point) => drawPoint(point, figure))}
      ${figure.crossing ? svg`<circle class="joint" cx=${figure.crossing.x} cy=${figure.crossing.y} r="8" />` : nothing}
    </svg>`;
  }
}

function drawPoint({ name, x, y }: MeasureFigure['points'][number], { base }: MeasureFigure) {
  return svg`<line class="measured" x1=${x} x2=${x} y1=${base} y2=${y} />
    <circle class="point" cx=${x} cy=${y} r="4.5" />
    <text class="anchor-middle" x=${x} y=${y + (y <= base ? -9 : 19)}>${name}</text>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'measure-diagram': MeasureDiagram;
  }
}
