import type { ShaftLine } from '@sternline/core';
import { html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import '../elements/choice-field.js';
import '../elements/data-table.js';
import type { ChoiceChangedEvent, ValueChangedEvent } from '../elements/events.js';
import '../elements/number-field.js';
import type { LineMeasures, ShimReadings } from '../model/measures.js';
import type { Units } from '../model/project.js';
import {
  SHIM_METHODS,
  shimGroups,
  shimsFrom,
  type ShimField,
  type ShimGroup,
  type ShimOutcome,
} from '../model/shim-readings.js';
import { fromScreen, screenUnit, toScreen } from '../model/units.js';
import { shared } from '../styles/shared.js';
import { MeasuresChangedEvent } from './leaf-events.js';
import { sectionStyles } from './section-styles.js';
import { alignmentWords, closureWords, shimSentence, shimTable } from './shim-words.js';

/** Readings at the coupling, and what to put under which foot of the motor. */
@customElement('shim-section')
export class ShimSection extends LitElement {
  static override styles = [shared, sectionStyles];

  @property({ attribute: false }) line!: ShaftLine;
  @property({ attribute: false }) measures: LineMeasures = {};
  /** rad/s, the wanted speed. */
  @property({ type: Number }) speed = 0;
  @property() units: Units = 'metric';

  private opened: boolean | undefined;

  protected override render() {
    const { units, speed } = this;
    const readings = this.readings();
    const outcome = shimsFrom(readings, speed);
    return html`<section aria-labelledby="shims">
      <h2 id="shims">What goes under the motor’s feet?</h2>
      <p class=${outcome.kind === 'problem' ? 'sentence problem' : 'sentence'} aria-live="polite">
        ${shimSentence(outcome, units)}
      </p>
      ${outcome.kind === 'shims' ? this.renderShims(outcome, readings) : nothing} ${this.renderRemark()}
      <details ?open=${this.openAtFirst(outcome)}>
        <summary>The readings</summary>
        <p>
          <strong>Take the battery off first:</strong> both shafts are turned together by hand, so that hubs
          which run out drop out of the figures.
        </p>
        <div class="fields">
          <choice-field
            label="Read with"
            hint="A dial counts up as its stem is pushed in."
            .value=${readings.method}
            .choices=${SHIM_METHODS}
            @choice-changed=${(event: ChoiceChangedEvent) => {
              this.takeMethod(event.choice);
            }}
          ></choice-field>
        </div>
        ${shimGroups(readings.method).map((group) => this.renderGroup(group, readings))}
      </details>
    </section>`;
  }

  // Settled once: what closes under the hands of who types in it would be lost.
  private openAtFirst(outcome: ShimOutcome): boolean {
    this.opened ??= this.measures.shims !== undefined && outcome.kind !== 'shims';
    return this.opened;
  }

  private readings(): ShimReadings {
    return this.measures.shims ?? { method: 'ruler-and-feeler', values: {} };
  }

  private renderShims({ shims }: Extract<ShimOutcome, { kind: 'shims' }>, { values }: ShimReadings) {
    const { units, speed } = this;
    const closure = closureWords(shims, values['tolerance'] ?? 0, units);
    return html`${shims.verdict ? html`<p>${alignmentWords(shims.verdict, speed, units)}</p>` : nothing}
      ${closure ? html`<p class="problem">${closure}</p>` : nothing}
      ${shims.assumed.map((sentence) => html`<p>${sentence}</p>`)}
      <data-table .table=${shimTable(shims, units)}></data-table>
      <p class="hint">
        The limits are those usual for machines with flexible couplings. Shim, tighten, and read again.
      </p>`;
  }

  private renderRemark() {
    const first = this.line.joints[0]?.kind;
    if (first !== 'universal') return nothing;
    return html`<p>
      A universal joint runs at an angle by design: put a rigid dummy (a sleeve over both shaft ends) in its
      place to read by, or shim to the angle you want.
    </p>`;
  }

  private renderGroup({ title, fields }: ShimGroup, { values }: ShimReadings) {
    return html`<fieldset>
      <legend>${title}</legend>
      <div class="quads">${fields.map((field) => this.renderField(field, values[field.path]))}</div>
    </fieldset>`;
  }

  private renderField({ path, label, hint, empty }: ShimField, value: number | undefined) {
    const { symbol, decimals } = screenUnit('diameter', this.units);
    const left = empty === undefined ? '' : ` Empty: ${empty}.`;
    return html`<number-field
      label=${label}
      hint=${`${hint}${left}`.trim()}
      unit=${symbol}
      .decimals=${decimals}
      .value=${value === undefined ? undefined : toScreen(value, 'length', this.units)}
      @value-changed=${(event: ValueChangedEvent) => {
        this.takeValue(path, event.value);
      }}
    ></number-field>`;
  }

  private takeMethod(choice: string): void {
    const method = SHIM_METHODS.find(({ value }) => value === choice)?.value;
    if (method) this.change({ ...this.readings(), method });
  }

  private takeValue(path: string, value: number | undefined): void {
    if (Number.isNaN(value)) return;
    const { method, values } = this.readings();
    const { [path]: _, ...others } = values;
    const next =
      value === undefined ? others : { ...others, [path]: fromScreen(value, 'length', this.units) };
    this.change({ method, values: next });
  }

  private change(shims: ShimReadings): void {
    this.dispatchEvent(new MeasuresChangedEvent({ ...this.measures, shims }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'shim-section': ShimSection;
  }
}
