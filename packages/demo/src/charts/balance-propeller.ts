import { css, html, LitElement, nothing, svg, type SVGTemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { shared } from '../styles/shared.js';
import { bladePath, clockSpot, massReach, type PlacedMass } from './balance-geometry.js';
import { chartStyles } from './chart-styles.js';

const SIZE = 208;
const REACH = 70;
const LARGEST = 10;

/** A mass to draw, with what is written beside it. */
export interface NamedMass extends PlacedMass {
  readonly name: string;
  readonly kind: 'trial' | 'correction';
}

/** The propeller seen from astern, blade 1 up, with masses on it: places to scale, areas as the masses. */
@customElement('balance-propeller')
export class BalancePropeller extends LitElement {
  static override styles = [
    shared,
    chartStyles,
    css`
      svg {
        width: ${SIZE}px;
        max-width: 100%;
        height: auto;
      }
      .blade {
        fill: var(--brass);
        stroke: var(--ink);
      }
      .hub {
        fill: var(--steel);
        stroke: var(--ink);
        stroke-width: 1.5;
      }
      .track {
        fill: none;
        stroke: var(--line);
        stroke-dasharray: 3 3;
      }
      .mark {
        stroke: var(--ink);
        stroke-width: 3;
      }
      .trial {
        fill: var(--accent);
        stroke: var(--sheet);
        stroke-width: 1.5;
      }
      .correction {
        fill: var(--ink);
        stroke: var(--sheet);
        stroke-width: 1.5;
      }
      .turn {
        fill: none;
        stroke: var(--accent);
        stroke-width: 1.5;
      }
      text.name {
        font-weight: 600;
        paint-order: stroke;
        stroke: var(--sheet);
        stroke-width: 3px;
        stroke-linejoin: round;
      }
    `,
  ];

  @property({ type: Number }) blades = 4;
  /** m, of the propeller. */
  @property({ type: Number }) diameter = 0;
  /** m, at which the masses sit. */
  @property({ type: Number }) radius = 0;
  @property({ attribute: false }) masses: readonly NamedMass[] = [];
  /** kg, the largest of all pictures that stand together. */
  @property({ type: Number }) largest = 0;
  @property() label = '';

  protected override render() {
    const scale = REACH / Math.max(this.diameter / 2, this.radius, 1e-6);
    const tip = (this.diameter / 2) * scale;
    const track = this.radius * scale;
    const angles = Array.from({ length: this.blades }, (_, blade) => (2 * Math.PI * blade) / this.blades);
    return html`<svg viewBox="${-SIZE / 2} ${-SIZE / 2} ${SIZE} ${SIZE}" role="img" aria-label=${this.label}>
      ${angles.map((angle) => svg`<path class="blade" d=${bladePath(angle, { reach: tip, hub: 0.2 * tip })} />`)}
      <circle class="hub" r=${0.2 * tip} />
      <line class="mark" x1="0" x2="0" y1=${-0.04 * tip} y2=${-0.19 * tip} />
      <circle class="track" r=${track} />
      ${angles.map((angle, blade) => drawNumber(angle, { blade, reach: 0.84 * tip }))}
      ${this.masses.map((mass) => this.drawMass(mass, track))}
    </svg>`;
  }

  private drawMass({ mass, angle, name, kind }: NamedMass, track: number): SVGTemplateResult {
    const { x, y } = clockSpot(angle, track);
    const reach = massReach(mass, { largest: this.largest, reach: LARGEST });
    const text = clockSpot(angle, REACH + 16);
    const side = Math.abs(text.x) < 20 ? 'anchor-middle' : text.x > 0 ? 'anchor-end' : 'anchor-start';
    const edge = side === 'anchor-middle' ? 0 : Math.sign(text.x) * (SIZE / 2 - 2);
    return svg`
      ${kind === 'trial' && angle > 0.01 ? svg`<path class="turn" d=${arcPath(angle, track + 14)} />` : nothing}
      <circle class=${kind} cx=${x} cy=${y} r=${reach} />
      <text class="name ${side}" x=${edge} y=${text.y + 4}>${name}</text>`;
  }
}

function drawNumber(angle: number, { blade, reach }: { blade: number; reach: number }): SVGTemplateResult {
  const { x, y } = clockSpot(angle, reach);
  return svg`<text class="anchor-middle" x=${x} y=${y + 4}>${blade + 1}</text>`;
}

/** From the mark clockwise to an angle. */
function arcPath(angle: number, reach: number): string {
  const to = clockSpot(angle, reach);
  return `M0 ${-reach}A${reach} ${reach} 0 ${angle > Math.PI ? 1 : 0} 1 ${to.x.toFixed(1)} ${to.y.toFixed(1)}`;
}

declare global {
  interface HTMLElementTagNameMap {
    'balance-propeller': BalancePropeller;
  }
}
