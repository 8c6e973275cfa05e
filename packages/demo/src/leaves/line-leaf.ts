import type { Assessment, LineFault, ShaftLine } from '@sternline/core';
import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { PartChosenEvent } from '../charts/chart-events.js';
import { lineParts, type LinePart } from '../charts/line-parts.js';
import '../elements/choice-field.js';
import type { ChoiceChangedEvent, TextChangedEvent } from '../elements/events.js';
import '../elements/text-field.js';
import { layoutOf, toOneJoint, toTwoJoints } from '../model/edit-line.js';
import { faultWords, partOfPath } from '../model/fault-words.js';
import type { LineMeasures } from '../model/measures.js';
import type { Units } from '../model/project.js';
import { shared } from '../styles/shared.js';
import './drilling-section.js';
import { LineCopiedEvent, LineEditedEvent, LineRemovedEvent } from './leaf-events.js';
import { lineLeafStyles } from './line-leaf-styles.js';
import { partFields } from './part-fields.js';
import './part-form.js';
import './points-section.js';
import './running-section.js';
import './shim-section.js';
import './verdict-note.js';

/** The parts of the line, the few fields of the chosen one, and what the whole comes to. */
@customElement('line-leaf')
export class LineLeaf extends LitElement {
  static override styles = [shared, lineLeafStyles];

  /** The line as entered; it may be one that cannot be. */
  @property({ attribute: false }) line!: ShaftLine;
  /** The line as drawn: the last one that could be. */
  @property({ attribute: false }) drawn!: ShaftLine;
  @property() lineId = '';
  @property({ attribute: false }) faults: readonly LineFault[] = [];
  /** Of the last line that could be. */
  @property({ attribute: false }) assessment: Assessment | undefined;
  @property() failure = '';
  @property() chosenPart = '';
  @property() units: Units = 'metric';
  @property({ type: Boolean }) onlyLine = false;
  /** What was measured in the hull. */
  @property({ attribute: false }) measures: LineMeasures = {};
  /** rad/s, the wanted speed. */
  @property({ type: Number }) speed = 0;

  protected override render() {
    const parts = this.numberedParts();
    const chosen = parts.find((part) => part.id === this.chosenPart);
    return html`<div class="bench">
        <section class="verdict" aria-labelledby="verdict">
          <h2 id="verdict">Will it whip?</h2>
          ${this.renderFaults(parts)}
          <verdict-note
            .assessment=${this.assessment}
            .failure=${this.failure}
            .units=${this.units}
            ?stale=${this.faults.length > 0}
          ></verdict-note>
        </section>
        ${
          chosen
            ? html`<part-form
                .shown=${chosen}
                .number=${parts.indexOf(chosen) + 1}
                .line=${this.line}
                .faults=${this.faults}
                .units=${this.units}
              ></part-form>`
            : nothing
        }
        <section class="layout" aria-label="Layout and parts">
          ${this.renderLineFields()} ${this.renderParts(parts, chosen)}
        </section>
      </div>
      ${this.renderSections()}`;
  }

  private renderSections() {
    const { drawn, measures, speed, units } = this;
    const bends = drawn.joints.filter(({ kind }) => kind !== 'rigid').length;
    return html`<running-section
        .line=${drawn}
        .assessment=${this.assessment}
        .speed=${speed}
        .units=${units}
      ></running-section>
      <points-section .line=${drawn} .measures=${measures} .units=${units}></points-section>
      <shim-section .line=${drawn} .measures=${measures} .speed=${speed} .units=${units}></shim-section>
      <drilling-section .measures=${measures} .bends=${bends} .units=${units}></drilling-section>`;
  }

  // The numbers are those of the drawing, which shows the last line that could be.
  private numberedParts(): LinePart[] {
    const entered = lineParts(this.line);
    const drawn = lineParts(this.drawn);
    const ids = new Set(drawn.map(({ id }) => id));
    const alike = entered.length === drawn.length && entered.every(({ id }) => ids.has(id));
    return alike ? drawn : entered;
  }

  private renderFaults(parts: readonly LinePart[]) {
    if (this.faults.length === 0) return nothing;
    return html`<div class="problem" role="alert">
      <p>The line cannot be as entered. The figures below are of the last one that could.</p>
      <ul>
        ${this.faults.map((fault) => this.renderFault(fault, parts))}
      </ul>
    </div>`;
  }

  private renderFault(fault: LineFault, parts: readonly LinePart[]): TemplateResult {
    const id = partOfPath(fault.path);
    const number = parts.findIndex((part) => part.id === id || discId(part) === id) + 1;
    const part = parts[number - 1];
    const words = faultWords(fault, this.units);
    const rest = words.charAt(0).toLowerCase() + words.slice(1);
    if (!part) return html`<li>${words}</li>`;
    const field = partFields(part, this.line).find(({ path }) => path === fault.path);
    return html`<li>
      <button type="button" class="plain" @click=${() => this.dispatchEvent(new PartChosenEvent(part.id))}>
        ${number} · ${part.name}</button
      >${field ? `, ${field.label.toLowerCase()}` : ''}: ${rest}
    </li>`;
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

  private onLayout(event: ChoiceChangedEvent): void {
    if (event.choice === 'two joints') this.edit(toTwoJoints(this.line));
    if (event.choice === 'one joint') this.edit(toOneJoint(this.line));
  }

  private edit(line: ShaftLine): void {
    this.dispatchEvent(new LineEditedEvent(line));
  }
}

// The drawing calls the propeller's disc the propeller.
function discId({ kind, shaft, index }: LinePart): string {
  return kind === 'propeller' ? `disc-${shaft}-${index}` : '';
}

declare global {
  interface HTMLElementTagNameMap {
    'line-leaf': LineLeaf;
  }
}
