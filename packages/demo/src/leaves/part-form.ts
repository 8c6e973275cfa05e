import type { LineFault, ShaftLine } from '@sternline/core';
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
import { partChoices, type PartChoice } from './part-choices.js';
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
        ${partChoices(part, this.line).map((choice) => this.renderChoice(choice))}
        ${partFields(part, this.line).map((field) => this.renderField(field))}
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

  private renderChoice({ label, hint, value, choices, take }: PartChoice): TemplateResult {
    return html`<choice-field
      label=${label}
      hint=${hint}
      .value=${value}
      .choices=${choices}
      @choice-changed=${(event: ChoiceChangedEvent) => {
        this.edit(take(event.choice));
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
