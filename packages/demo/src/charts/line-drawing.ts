import { html, LitElement, nothing, svg, type SVGTemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { place } from './place.js';
import { shared } from '../styles/shared.js';
import { PartChosenEvent } from './chart-events.js';
import { drawingStyles } from './drawing-styles.js';
import {
  layoutDrawing,
  type Balloon,
  type Drawing,
  type DrawnJoint,
  type DrawnMotor,
  type DrawnShaft,
  type DrawnView,
} from './drawing-geometry.js';
import { angleLabelSpot, arcPath, bladePath, bowPath, forkScale, frame, yokePath } from './drawing-shapes.js';
import type { DrawableLine } from './line-parts.js';
import { SizeController } from './size-controller.js';

/** px, how far from a joint its angle is drawn. */
const SWEEP = 46;
/** px, how far a whirling line is drawn out of its place. */
const BOW = 26;

/** Sideways movement along one shaft: `at` in m, `displacement` with the largest of the whole line as 1. */
export interface ShaftBow {
  readonly at: readonly number[];
  readonly displacement: readonly number[];
}

/** The shaft line to scale, side view over plan view; its parts are chosen by their numbered balloons. */
@customElement('line-drawing')
export class LineDrawing extends LitElement {
  static override styles = [shared, drawingStyles];

  @property({ attribute: false }) line: DrawableLine | undefined;
  /** The chosen part's id. */
  @property() chosen = '';
  /** How each shaft moves in a whirl, drawn much larger than it is; empty draws none. */
  @property({ attribute: false }) bows: readonly ShaftBow[] = [];
  /** rad, how far the motor shaft is turned: it shows in the forks of the joints and the blades. */
  @property({ type: Number }) turn = 0;
  /** What to write at each joint, such as its angle. */
  @property({ attribute: false }) jointLabels: readonly string[] = [];
  /** m, of which the scale bar is a round number. */
  @property({ type: Number }) barUnit = 0.001;
  /** What the scale bar says for its length in m. */
  @property({ attribute: false }) barLabel: (length: number) => string = () => '';

  private readonly size = new SizeController(this);

  protected override render() {
    const { line, size } = this;
    if (!line || size.width < 40 || size.height < 40) return nothing;
    const count = line.shafts.reduce((sum, shaft) => sum + 2 + shaft.supports.length + shaft.discs.length, 0);
    const named = size.width / count > 84;
    const apart = named ? 84 : Math.min(44, (size.width - 4) / count);
    const drawing = layoutDrawing(line, {
      width: size.width,
      height: size.height,
      balloonRow: named ? 62 : 46,
      apart,
      barUnit: this.barUnit,
    });
    return html`
      <svg width=${size.width} height=${size.height} aria-hidden="true" @click=${this.onSvgClick}>
        ${this.drawGuides(drawing)} ${drawing.views.map((view) => this.drawView(view))}
        ${this.drawBows(drawing)} ${drawing.balloons.map((balloon) => this.drawLeader(balloon))}
        ${this.drawAngles(drawing)} ${this.drawBar(drawing)}
      </svg>
      <div class="balloons" role="group" aria-label="Parts of the line">
        ${drawing.balloons.map((balloon) => this.drawBalloon(balloon, { apart, named }))}
      </div>
    `;
  }

  private drawBalloon(balloon: Balloon, { apart, named }: { apart: number; named: boolean }) {
    const spot = place({ left: `${balloon.x - apart / 2}px`, width: `${apart}px` });
    return html`<button
      type="button"
      class="balloon"
      ${spot}
      aria-pressed=${this.chosen === balloon.id ? 'true' : 'false'}
      title=${balloon.name}
      @click=${() => {
        this.choose(balloon.id);
      }}
    >
      <span class="number">${balloon.number}</span>
      <span class=${named ? 'name' : 'unseen'}>${balloon.name}</span>
    </button>`;
  }

  private drawLeader({ id, x, target }: Balloon): SVGTemplateResult {
    const top = this.size.width > 0 ? 36 : 0;
    return svg`<g class=${this.classes('leader', id)}>
      <path d="M${x},${top} L${target.x},${target.y}" />
      <circle cx=${target.x} cy=${target.y} r="2" />
    </g>`;
  }

  private drawGuides({ views, balloons }: Drawing): SVGTemplateResult {
    const { width } = this.size;
    const plan = views.find((view) => view.name === 'plan');
    const stations = balloons.filter((balloon) => balloon.kind === 'joint' || balloon.kind === 'propeller');
    return svg`
      ${views.map(
        ({ name, keel }) => svg`
          <line class="keel" x1="0" x2=${width} y1=${keel} y2=${keel} />
          <text class="view-name" x="2" y=${keel - 5}>${name === 'side' ? 'side' : 'plan'}</text>`,
      )}
      ${stations.map(
        ({ target }) => svg`<line class="station" x1=${target.x} x2=${target.x}
          y1=${target.y} y2=${(plan?.keel ?? 0) + 8} />`,
      )}`;
  }

  private drawView(view: DrawnView): SVGTemplateResult {
    return svg`
      ${view.motor ? this.drawMotor(view.motor) : nothing}
      ${view.shafts.map((shaft) => this.drawShaft(shaft))}
      ${view.joints.map((joint, index) => this.drawJoint(joint, view.name === 'side' ? (this.jointLabels[index] ?? '') : ''))}`;
  }

  private drawBows({ views, scale }: Drawing) {
    const side = views.find(({ name }) => name === 'side');
    return this.bows.map((bow, index) => {
      const shaft = side?.shafts[index];
      if (!shaft) return nothing;
      return svg`<g transform=${frame(shaft)}>
        <path class="bow" d=${bowPath(bow, { scale, reach: BOW })} />
        <path class="bow mirrored" d=${bowPath(bow, { scale, reach: -BOW })} />
      </g>`;
    });
  }

  private drawMotor(motor: DrawnMotor): SVGTemplateResult {
    const { length, height } = motor;
    return svg`<g class=${this.classes('motor', 'motor')} data-part="motor" transform=${frame(motor)}>
      <rect x=${-length} y=${-height / 2} width=${length} height=${height} rx="2" />
      <path d="M${-length * 0.86},${-height / 2} v${height} M${-length * 0.14},${-height / 2} v${height}" />
    </g>`;
  }

  private drawShaft(shaft: DrawnShaft): SVGTemplateResult {
    const { length, thickness, tube, bushes, discs, propeller } = shaft;
    return svg`<g transform=${frame(shaft)}>
      <line class="axis" x1="-12" x2=${length + 14} y1="0" y2="0" />
      ${
        tube
          ? svg`<rect class=${this.classes('tube', shaft.part)} data-part=${shaft.part} x=${tube.from}
              y=${-tube.thickness / 2} width=${tube.to - tube.from} height=${tube.thickness} />`
          : nothing
      }
      <rect class=${this.classes('shaft', shaft.part)} data-part=${shaft.part} x="0" y=${-thickness / 2}
        width=${length} height=${thickness} />
      ${bushes.map(
        (bush) => svg`<rect class=${this.classes('bush', bush.part)} data-part=${bush.part}
          x=${bush.at - bush.length / 2} y=${-bush.height / 2} width=${bush.length} height=${bush.height} />`,
      )}
      ${discs.map(
        (disc) => svg`<rect class=${this.classes('disc', disc.part)} data-part=${disc.part} x=${disc.at - 2.5}
          y=${-disc.height / 2} width="5" height=${disc.height} rx="1" />`,
      )}
      ${propeller ? this.drawPropeller(propeller) : nothing}
    </g>`;
  }

  private drawPropeller(propeller: NonNullable<DrawnShaft['propeller']>): SVGTemplateResult {
    const { at, radius, blades, part } = propeller;
    const hub = Math.max(4, radius * 0.22);
    const phases = Array.from({ length: blades }, (_, blade) =>
      Math.cos((2 * Math.PI * blade) / blades + 0.35 + this.turn),
    );
    return svg`<g class=${this.classes('propeller', part)} data-part=${part} transform="translate(${at},0)">
      ${phases.map((phase) => svg`<path d=${bladePath(radius * phase, hub)} />`)}
      <path d="M${-hub},${-hub * 0.8} h${1.3 * hub} q${1.2 * hub},${0.8 * hub} 0,${1.6 * hub} h${-1.3 * hub} z" />
    </g>`;
  }

  // The side view alone carries the angle; the plan sees each fork a quarter turn from how the side view sees it.
  private drawJoint(joint: DrawnJoint, label: string): SVGTemplateResult {
    const { radius, origin, turnAfter } = joint;
    const seen = this.turn + (label ? 0 : Math.PI / 2);
    return svg`<g class=${this.classes('joint', joint.part)} data-part=${joint.part}>
      <g transform=${frame(joint)}>
        ${joint.kind === 'universal' && label ? svg`<line class="axis" x1="0" x2=${SWEEP + 10} y1="0" y2="0" />` : nothing}
        <path d=${yokePath(radius, 1)} transform=${forkScale(seen)} />
      </g>
      <g transform="translate(${origin.x},${origin.y}) rotate(${turnAfter})"><path d=${yokePath(radius, -1)} transform=${forkScale(seen + Math.PI / 2)} /></g>
      <circle cx=${origin.x} cy=${origin.y} r=${radius * 0.45} />
      ${label ? svg`<path class="angle" d=${arcPath(joint, SWEEP)} />` : nothing}
    </g>`;
  }

  // On top of everything else, for no line to cross them.
  private drawAngles({ views }: Drawing) {
    const joints = views.find(({ name }) => name === 'side')?.joints ?? [];
    return joints.map((joint, index) => {
      const { x, y } = angleLabelSpot(joint, SWEEP);
      return svg`<text class="angle-label" x=${x} y=${y}>${this.jointLabels[index] ?? ''}</text>`;
    });
  }

  private drawBar({ bar }: Drawing): SVGTemplateResult {
    const { width, height } = this.size;
    const left = width - bar.pixels - 8;
    const base = height - 6;
    return svg`<g class="bar">
      <path d="M${left},${base - 5} v5 h${bar.pixels} v-5" />
      <text x=${left + bar.pixels / 2} y=${base - 6} text-anchor="middle">${this.barLabel(bar.length)}</text>
    </g>`;
  }

  private classes(kind: string, part: string): string {
    return part === this.chosen ? `${kind} chosen` : kind;
  }

  private onSvgClick(event: Event): void {
    const part = event.target instanceof Element ? event.target.closest('[data-part]') : null;
    const id = part?.getAttribute('data-part');
    if (id) this.choose(id);
  }

  private choose(part: string): void {
    this.dispatchEvent(new PartChosenEvent(part));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'line-drawing': LineDrawing;
  }
}
