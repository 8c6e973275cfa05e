import { MATERIALS, type LineFault, type ShaftLine } from '@sternline/core';
import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { LinePart } from '../charts/line-parts.js';
import '../elements/choice-field.js';
import type { ChoiceChangedEvent, ValueChangedEvent } from '../elements/events.js';
import '../elements/number-field.js';
import { addDisc, addSupport, removeFrom, resizeShaft, rethickenShaft } from '../model/edit-line.js';
import { faultWords } from '../model/fault-words.js';
import type { Units } from '../model/project.js';
import { getIn, setIn } from '../model/set-in.js';
import { fromScreen, screenUnit, toScreen } from '../model/units.js';
import { shared } from '../styles/shared.js';
import { LineEditedEvent } from './leaf-events.js';
import { partFields, type PartField } from './part-fields.js';

/** The few fields of one part. */
@customElement('part-form')
export class PartForm extends LitElement {
  static override styles = [
    shared,
    css`
      :host {
        display: block;
      }
      .fields {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(15rem, 1fr));
        gap: 1rem 1.5rem;
        margin-bottom: 1rem;
      }
    `,
  ];

  // Not named `part`: an element has a property of that name.
  @property({ attribute: false }) shown!: LinePart;
  /** Its number on the drawing. */
  @property({ type: Number }) number = 0;
  @property({ attribute: false }) line!: ShaftLine;
  @property({ attribute: false }) faults: readonly LineFault[] = [];
  @property() units: Units = 'metric';

  protected override render() {
    const { shown: part, number } = this;
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
    const bound = (si: number) => Number(toScreen(si, field.quantity, units).toPrecision(3));
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
    const whole = /^shafts\[(\d+)\]\.(length|outerDiameter)$/.exec(path);
    if (!whole || si === undefined) {
      this.edit(setIn(this.line, path, si));
      return;
    }
    const shaft = Number(whole[1]);
    this.edit(
      whole[2] === 'length'
        ? resizeShaft(this.line, { shaft, length: si })
        : rethickenShaft(this.line, { shaft, outerDiameter: si }),
    );
  }

  private edit(line: ShaftLine): void {
    this.dispatchEvent(new LineEditedEvent(line));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'part-form': PartForm;
  }
}
