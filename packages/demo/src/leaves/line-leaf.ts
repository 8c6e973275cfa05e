import { MATERIALS, type Assessment, type LineFault, type ShaftLine } from '@sternline/core';
import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { PartChosenEvent } from '../charts/chart-events.js';
import { lineParts, type LinePart } from '../charts/line-parts.js';
import '../elements/choice-field.js';
import type { ChoiceChangedEvent, TextChangedEvent, ValueChangedEvent } from '../elements/events.js';
import '../elements/number-field.js';
import '../elements/text-field.js';
import {
  addDisc,
  addSupport,
  layoutOf,
  removeFrom,
  resizeShaft,
  toOneJoint,
  toTwoJoints,
} from '../model/edit-line.js';
import { faultPlace, faultWords } from '../model/fault-words.js';
import type { Units } from '../model/project.js';
import { getIn, setIn } from '../model/set-in.js';
import { fromScreen, screenUnit, toScreen } from '../model/units.js';
import { shared } from '../styles/shared.js';
import { LineCopiedEvent, LineEditedEvent, LineRemovedEvent } from './leaf-events.js';
import { lineLeafStyles } from './line-leaf-styles.js';
import { partFields, type PartField } from './part-fields.js';
import './verdict-note.js';

/** The parts of the line, the few fields of the chosen one, and what the whole comes to. */
@customElement('line-leaf')
export class LineLeaf extends LitElement {
  static override styles = [shared, lineLeafStyles];

  /** The line as entered; it may be one that cannot be. */
  @property({ attribute: false }) line!: ShaftLine;
  @property() lineId = '';
  @property({ attribute: false }) faults: readonly LineFault[] = [];
  /** Of the last line that could be. */
  @property({ attribute: false }) assessment: Assessment | undefined;
  @property() failure = '';
  @property() chosenPart = '';
  @property() units: Units = 'metric';
  @property({ type: Boolean }) onlyLine = false;

  protected override render() {
    const parts = lineParts(this.line);
    const chosen = parts.find((part) => part.id === this.chosenPart) ?? parts[0];
    return html`
      <section aria-labelledby="verdict">
        <h2 id="verdict">Will it whip?</h2>
        ${this.renderFaults()}
        <verdict-note
          .assessment=${this.assessment}
          .failure=${this.failure}
          .units=${this.units}
          ?stale=${this.faults.length > 0}
        ></verdict-note>
      </section>
      <section class="bench" aria-label="Parts and their measures">
        <div>${this.renderLineFields()} ${this.renderParts(parts, chosen)}</div>
        ${chosen ? this.renderPart(chosen, parts.indexOf(chosen) + 1) : nothing}
      </section>
    `;
  }

  private renderFaults() {
    if (this.faults.length === 0) return nothing;
    return html`<div class="problem" role="alert">
      <p>The line cannot be as entered. The figures below are of the last one that could.</p>
      <ul>
        ${this.faults.map((fault) => html`<li>${faultPlace(fault.path)}: ${faultWords(fault, this.units)}</li>`)}
      </ul>
    </div>`;
  }

  private renderLineFields() {
    return html`<div class="fields">
      <text-field
        label="Name of this layout"
        .value=${this.line.name}
        @text-changed=${(event: TextChangedEvent) => {
          this.edit({ ...this.line, name: event.text || this.line.name });
        }}
      ></text-field>
      <choice-field
        label="Layout"
        hint="Two joints share the bend and, in phase, cancel each other."
        .value=${layoutOf(this.line)}
        .choices=${this.layouts()}
        @choice-changed=${this.onLayout}
      ></choice-field>
      <div class="row">
        <button type="button" @click=${() => this.dispatchEvent(new LineCopiedEvent(this.lineId))}>
          Duplicate
        </button>
        <button
          type="button"
          ?disabled=${this.onlyLine}
          @click=${() => this.dispatchEvent(new LineRemovedEvent(this.lineId))}
        >
          Remove this layout
        </button>
      </div>
    </div>`;
  }

  private layouts() {
    const known = [
      { value: 'one joint', label: 'one joint' },
      { value: 'two joints', label: 'two joints' },
    ];
    return layoutOf(this.line) === 'other' ? [...known, { value: 'other', label: 'as drawn' }] : known;
  }

  private renderParts(parts: readonly LinePart[], chosen: LinePart | undefined) {
    return html`<h3 id="parts">Parts, from the motor aft</h3>
      <ol class="parts" aria-labelledby="parts">
        ${parts.map(
          (part, index) =>
            html`<li>
              <button
                type="button"
                aria-current=${part === chosen ? 'true' : 'false'}
                @click=${() => this.dispatchEvent(new PartChosenEvent(part.id))}
              >
                <span class="number">${index + 1}</span> ${part.name}
              </button>
            </li>`,
        )}
      </ol>`;
  }

  private renderPart(part: LinePart, number: number): TemplateResult {
    return html`<div class="part" role="group" aria-labelledby="part-name">
      <h3 id="part-name">${number} · ${part.name}</h3>
      <div class="fields">
        ${this.renderChoices(part)} ${partFields(part, this.line).map((field) => this.renderField(field))}
      </div>
      <div class="row">${this.renderActions(part)}</div>
    </div>`;
  }

  private renderField(field: PartField): TemplateResult {
    const { units } = this;
    const value = getIn(this.line, field.path);
    const fault = this.faults.find(({ path }) => path === field.path);
    const { symbol, decimals } = screenUnit(field.quantity, units);
    const bound = (si: number) => Number(toScreen(si, field.quantity, units).toPrecision(4));
    return html`<number-field
      label=${field.label}
      unit=${symbol}
      hint=${field.empty ? `${field.hint} Empty: ${field.empty}.` : field.hint}
      error=${fault ? faultWords(fault, units) : ''}
      .min=${bound(field.min)}
      .max=${bound(field.max)}
      .decimals=${decimals}
      .step=${10 ** -Math.min(decimals, 1)}
      .value=${typeof value === 'number' ? toScreen(value, field.quantity, units) : undefined}
      @value-changed=${(event: ValueChangedEvent) => {
        this.takeValue(field, event.value);
      }}
    ></number-field>`;
  }

  private renderChoices(part: LinePart) {
    if (part.kind === 'shaft') return this.renderMaterial(`shafts[${part.index}].material`);
    if (part.kind === 'joint') {
      const path = `joints[${part.index}].kind`;
      return html`<choice-field
        label="Kind"
        hint="A rigid coupling carries no angle."
        .value=${String(getIn(this.line, path))}
        .choices=${[
          { value: 'universal', label: 'universal joint' },
          { value: 'flexible', label: 'flexible coupling' },
          { value: 'rigid', label: 'rigid coupling' },
        ]}
        @choice-changed=${(event: ChoiceChangedEvent) => {
          this.edit(setIn(this.line, path, event.choice));
        }}
      ></choice-field>`;
    }
    if (part.kind !== 'support') return nothing;
    const path = `shafts[${part.shaft}].supports[${part.index}].fixesSlope`;
    return html`<choice-field
      label="Holds"
      hint="A short bush lets the shaft tilt; one longer than three diameters, or a pair, also holds its direction."
      .value=${getIn(this.line, path) === true ? 'slope' : 'place'}
      .choices=${[
        { value: 'place', label: 'its place' },
        { value: 'slope', label: 'its place and direction' },
      ]}
      @choice-changed=${(event: ChoiceChangedEvent) => {
        this.edit(setIn(this.line, path, event.choice === 'slope' ? true : undefined));
      }}
    ></choice-field>`;
  }

  private renderMaterial(path: string) {
    const material = getIn(this.line, path) as ShaftLine['shafts'][number]['material'];
    const names: string[] = Object.values(MATERIALS).map(({ name }) => name);
    const all = names.includes(material.name) ? names : [...names, material.name];
    return html`<choice-field
      label="Material"
      hint="As bought; stiffness and weight come from it."
      .value=${material.name}
      .choices=${all.map((name) => ({ value: name, label: name }))}
      @choice-changed=${(event: ChoiceChangedEvent) => {
        const found = Object.values(MATERIALS).find(({ name }) => name === event.choice);
        if (found) this.edit(setIn(this.line, path, found));
      }}
    ></choice-field>`;
  }

  private renderActions({ kind, shaft, index }: LinePart) {
    if (kind === 'shaft') {
      return html`<button
          type="button"
          @click=${() => {
            this.edit(addSupport(this.line, shaft));
          }}
        >
          Add a bush
        </button>
        <button
          type="button"
          @click=${() => {
            this.edit(addDisc(this.line, shaft));
          }}
        >
          Add a disc
        </button>`;
    }
    if (kind !== 'support' && kind !== 'disc') return nothing;
    const list = kind === 'support' ? 'supports' : 'discs';
    return html`<button
      type="button"
      @click=${() => {
        this.edit(removeFrom(this.line, { kind: list, shaft, index }));
      }}
    >
      Remove this ${kind === 'support' ? 'bush' : 'disc'}
    </button>`;
  }

  private takeValue({ path, quantity, empty }: PartField, value: number | undefined): void {
    const si =
      value === undefined ? (empty === undefined ? NaN : undefined) : fromScreen(value, quantity, this.units);
    const resized = /^shafts\[(\d+)\]\.length$/.exec(path);
    if (resized && si !== undefined) {
      this.edit(resizeShaft(this.line, { shaft: Number(resized[1]), length: si }));
    } else {
      this.edit(setIn(this.line, path, si));
    }
  }

  private onLayout(event: ChoiceChangedEvent): void {
    if (event.choice === 'two joints') this.edit(toTwoJoints(this.line));
    if (event.choice === 'one joint') this.edit(toOneJoint(this.line));
  }

  private edit(line: ShaftLine): void {
    this.dispatchEvent(new LineEditedEvent(line));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'line-leaf': LineLeaf;
  }
}
