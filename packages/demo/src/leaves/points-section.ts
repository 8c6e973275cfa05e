import { alignLine, type ShaftLine } from '@sternline/core';
import { html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import '../charts/measure-diagram.js';
import type { MeasurePoint, MeasureView } from '../charts/measure-geometry.js';
import type { MeasureChangedEvent } from '../elements/events.js';
import '../elements/measure-field.js';
import { measuredAxes, type PointsOutcome } from '../model/measured-axes.js';
import { RULER_TOLERANCE, type LineMeasures, type MeasuredPoints, type PointKey } from '../model/measures.js';
import type { Units } from '../model/project.js';
import { fromScreen, screenUnit, toScreen } from '../model/units.js';
import { shared } from '../styles/shared.js';
import { LineEditedEvent, MeasuresChangedEvent } from './leaf-events.js';
import { pointsSentence, pointWords } from './points-words.js';
import { QuietValue } from './quiet-value.js';
import { sectionStyles } from './section-styles.js';

const NONE: MeasuredPoints = {};

/** Points measured on the axes of motor and tube, the joint angles they give, and one press to use them. */
@customElement('points-section')
export class PointsSection extends LitElement {
  static override styles = [shared, sectionStyles];

  @property({ attribute: false }) line!: ShaftLine;
  @property({ attribute: false }) measures: LineMeasures = {};
  @property() units: Units = 'metric';

  private opened: boolean | undefined;
  private readonly outcome = new QuietValue(this, measuredAxes);

  protected override render() {
    const { line, units } = this;
    const bends = line.joints.filter(({ kind }) => kind !== 'rigid').length;
    const points = this.measures.points ?? NONE;
    const known = bends === 1 || bends === 2;
    const outcome = known ? this.outcome.of(points, bends) : undefined;
    return html`<section aria-labelledby="points">
      <h2 id="points">Where do motor and tube lie?</h2>
      ${known ? nothing : html`<p class="sentence">Measured points serve a line that bends at one joint or two; this one bends at ${bends}.</p>`}
      ${outcome ? this.renderOutcome(outcome) : nothing}
      ${
        known
          ? html`<div class="figures">
                <measure-diagram
                  kind="side"
                  label="Side view: what is measured, heights above the keel line at four stations"
                  .view=${viewOf(points, 'height', units)}
                ></measure-diagram>
                <measure-diagram
                  kind="plan"
                  label="From above: what is measured, offsets from the centre line at four stations"
                  .view=${viewOf(points, 'offset', units)}
                ></measure-diagram>
              </div>
              <details ?open=${this.openAtFirst()}>
                <summary>The measured points</summary>
                ${this.renderAxis('motor', points)} ${this.renderAxis('tube', points)}
                ${bends === 2 ? this.renderJoints(points) : nothing}
              </details>`
          : nothing
      }
    </section>`;
  }

  // Settled once: what closes under the hands of who types in it would be lost.
  private openAtFirst(): boolean {
    this.opened ??= this.measures.points === undefined;
    return this.opened;
  }

  private renderOutcome(outcome: PointsOutcome) {
    const stale = this.outcome.waiting ? 'stale' : '';
    return html`<div class=${stale}>
      <p class=${outcome.kind === 'problem' ? 'sentence problem' : 'sentence'} aria-live="polite">
        ${pointsSentence(outcome, this.line, this.units)}
      </p>
      ${
        outcome.kind === 'axes'
          ? html`${outcome.axes.assumed.map(({ sentence }) => html`<p>${sentence}</p>`)}
              <div class="row">
                <button
                  type="button"
                  class="main"
                  @click=${() => {
                    this.use(outcome);
                  }}
                >
                  Use these angles
                </button>
                <span class="hint"
                  >Turns the shafts of the drawing to the measured axes; undo brings them back.</span
                >
              </div>`
          : nothing
      }
    </div>`;
  }

  private renderAxis(axis: 'motor' | 'tube', points: MeasuredPoints) {
    const name = axis === 'motor' ? 'Axis of the motor' : 'Axis of the stern tube';
    const keys = ([1, 2] as const).flatMap((station) =>
      (['at', 'height', 'offset'] as const).map((view): PointKey => `${axis}-${station}-${view}`),
    );
    return html`<fieldset>
      <legend>${name}, at two stations</legend>
      <div class="triples">${keys.map((key) => this.renderPoint(key, points))}</div>
    </fieldset>`;
  }

  private renderJoints(points: MeasuredPoints) {
    return html`<fieldset>
      <legend>Joint centres</legend>
      <div class="triples">
        ${(['joint-1-at', 'joint-2-at'] as const).map((key) => this.renderPoint(key, points))}
      </div>
    </fieldset>`;
  }

  private renderPoint(key: PointKey, points: MeasuredPoints) {
    const { units } = this;
    const { label, hint } = pointWords(key);
    const { symbol, decimals } = screenUnit('length', units);
    const { value, tolerance = RULER_TOLERANCE } = points[key] ?? {};
    return html`<measure-field
      label=${label}
      hint=${hint}
      unit=${symbol}
      .decimals=${decimals}
      .value=${value === undefined ? undefined : toScreen(value, 'length', units)}
      .tolerance=${Number(toScreen(tolerance, 'length', units).toPrecision(3))}
      @measure-changed=${(event: MeasureChangedEvent) => {
        this.take(key, event);
      }}
    ></measure-field>`;
  }

  private take(key: PointKey, { value, tolerance }: MeasureChangedEvent): void {
    const si = (shown: number) => fromScreen(shown, 'length', this.units);
    const reading = { ...(value === undefined ? {} : { value: si(value) }), tolerance: si(tolerance) };
    const points = { ...this.measures.points, [key]: reading };
    this.dispatchEvent(new MeasuresChangedEvent({ ...this.measures, points }));
  }

  private use(outcome: PointsOutcome): void {
    if (outcome.kind === 'axes') this.dispatchEvent(new LineEditedEvent(alignLine(this.line, outcome.axes)));
  }
}

/** Until they are measured, points stand where those of such a line might. */
const LIKELY: Readonly<Record<string, number>> = {
  'motor-1-at': 0.01,
  'motor-2-at': 0.06,
  'tube-1-at': 0.1,
  'tube-2-at': 0.36,
  'motor-1-height': 0.09,
  'motor-2-height': 0.09,
  'tube-1-height': 0.08,
  'tube-2-height': 0.02,
};

function viewOf(points: MeasuredPoints, view: 'height' | 'offset', units: Units): MeasureView {
  const complete = (['motor', 'tube'] as const).every((axis) =>
    ([1, 2] as const).every((station) => points[`${axis}-${station}-at`]?.value !== undefined),
  );
  const valueOf = (key: PointKey): number | undefined => (complete ? points[key]?.value : LIKELY[key]);
  const point = (axis: 'motor' | 'tube', station: 1 | 2): MeasurePoint => ({
    name: `${axis} ${station}`,
    at: toScreen(valueOf(`${axis}-${station}-at`) ?? 0, 'length', units),
    from: toScreen(valueOf(`${axis}-${station}-${view}`) ?? 0, 'length', units),
  });
  return {
    motor: [point('motor', 1), point('motor', 2)],
    tube: [point('tube', 1), point('tube', 2)],
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'points-section': PointsSection;
  }
}
