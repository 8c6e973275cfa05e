import { css, html, LitElement, nothing, svg, type SVGTemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { shared } from '../styles/shared.js';
import { chartStyles } from './chart-styles.js';
import { SizeController } from './size-controller.js';
import { yokeViews, type Seen, type YokeLine, type YokeView } from './yoke-geometry.js';

const HEIGHT = 176;
const REACH = 52;
const CELL = 190;

/** The cross and yokes of every universal joint, looking aft along its driving shaft. */
@customElement('yoke-chart')
export class YokeChart extends LitElement {
  static override styles = [
    shared,
    chartStyles,
    css`
      .swing {
        fill: none;
        stroke: var(--line-thin);
        stroke-dasharray: 4 3;
      }
      .yoke {
        stroke: var(--ink);
        stroke-width: 1.5;
      }
      .driving {
        fill: var(--accent);
        stroke: var(--ink);
      }
      .driven {
        fill: var(--steel);
      }
      .pin {
        stroke: var(--ink);
        stroke-width: 5;
        stroke-linecap: round;
      }
      .pin.thin {
        stroke: var(--paper);
        stroke-width: 2;
      }
      .hub {
        fill: var(--sheet);
        stroke: var(--ink);
        stroke-width: 1.5;
      }
      .leader {
        stroke: var(--line);
      }
    `,
  ];

  @property({ attribute: false }) line: YokeLine | undefined;
  /** rad, angle of the motor shaft. */
  @property({ type: Number }) turn = 0;
  /** What stands under each picture. */
  @property({ attribute: false }) names: readonly string[] = [];

  private readonly size = new SizeController(this);

  protected override render() {
    const { size, line, turn } = this;
    if (!line || size.width < 80) return nothing;
    const views = yokeViews(line, turn);
    const degrees = Math.round((turn * 180) / Math.PI);
    const label = `The yokes looking aft, with the motor shaft at ${degrees}°`;
    return html`<svg viewBox="0 0 ${size.width} ${HEIGHT}" height=${HEIGHT} role="img" aria-label=${label}>
      ${views.map((view, index) => this.drawJoint(view, index))}
    </svg>`;
  }

  private drawJoint({ joint, driving, driven }: YokeView, index: number): SVGTemplateResult {
    const x = CELL / 2 + index * CELL;
    const y = 78;
    const first = index === 0;
    return svg`<g transform="translate(${x},${y})">
      <circle class="swing" r=${REACH + 8} />
      ${ears(driven, 'yoke driven')}
      ${pin(driven)} ${pin(driving)}
      ${ears(driving, 'yoke driving')}
      <circle class="hub" r="7" />
      ${first ? this.drawNames(driving, driven) : nothing}
      <text class="anchor-middle" y=${REACH + 40}>${this.names[joint] ?? `joint ${joint + 1}`}</text>
    </g>`;
  }

  private drawNames(driving: Seen, driven: Seen) {
    return svg`${named(driving, 'driving')} ${named(driven, 'driven')}`;
  }
}

function named({ right, up }: Seen, name: string) {
  const out = REACH + 14;
  const length = Math.hypot(right, up) || 1;
  const x = (right / length) * out;
  const y = (-up / length) * out;
  return svg`<line class="leader" x1=${right * REACH} y1=${-up * REACH} x2=${x} y2=${y} />
    <text class="soft ${Math.abs(x) < 16 ? 'anchor-middle' : x > 0 ? 'anchor-start' : 'anchor-end'}" x=${x + Math.sign(x) * 3} y=${y + (y < 0 ? -3 : 11)}>${name}</text>`;
}

/** The two ears of a yoke, at the ends of its pin and square to it. */
function ears({ right, up }: Seen, kind: string): SVGTemplateResult[] {
  const tilt = (Math.atan2(-up, right) * 180) / Math.PI;
  const reach = Math.hypot(right, up) * REACH;
  return [0, 180].map(
    (half) => svg`<rect class=${kind} x=${reach - 9} y="-13" width="11" height="26" rx="3"
      transform="rotate(${tilt + half})" />`,
  );
}

function pin({ right, up }: Seen): SVGTemplateResult {
  const x = right * REACH;
  const y = -up * REACH;
  return svg`<line class="pin" x1=${-x} y1=${-y} x2=${x} y2=${y} /><line class="pin thin" x1=${-x} y1=${-y} x2=${x} y2=${y} />`;
}

declare global {
  interface HTMLElementTagNameMap {
    'yoke-chart': YokeChart;
  }
}
