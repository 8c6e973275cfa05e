import { yokePhase, type ShaftLine, type ShaftPhase } from '@sternline/core';
import { html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { ValueChangedEvent } from '../elements/events.js';
import '../elements/number-field.js';
import type { LineMeasures } from '../model/measures.js';
import type { Units } from '../model/project.js';
import { setIn } from '../model/set-in.js';
import { shared } from '../styles/shared.js';
import { LineEditedEvent, MeasuresChangedEvent } from './leaf-events.js';
import { phaseSentence, toothSentence } from './phase-words.js';
import { sectionStyles } from './section-styles.js';

/** How the yokes of the shafts between two joints have to stand to one another. */
@customElement('phase-section')
export class PhaseSection extends LitElement {
  static override styles = [shared, sectionStyles];

  @property({ attribute: false }) line!: ShaftLine;
  @property({ attribute: false }) measures: LineMeasures = {};
  @property() units: Units = 'metric';

  protected override render() {
    const { line, units } = this;
    const teeth = this.measures.splineTeeth;
    const phase = yokePhase(line, teeth === undefined ? {} : { teeth });
    const one = line.joints.filter(({ kind }) => kind === 'universal').length < 2;
    return html`<section aria-labelledby="phase">
      <h2 id="phase">Do the yokes stand right?</h2>
      ${
        one
          ? html`<p class="sentence">
              One joint has nothing to be in phase with: its swing goes to the propeller whole. Two joints at
              equal angles can cancel it.
            </p>`
          : phase.shafts.map(
              (shaft) =>
                html`<p class="sentence">${phaseSentence(phase, shaft, line, units)}</p>
                  ${shaft.spline ? html`<p>${toothSentence(shaft, units)}</p>` : nothing}
                  ${this.renderUse(shaft)}`,
            )
      }
      ${one ? nothing : this.renderTeeth(teeth)}
    </section>`;
  }

  private renderUse(phase: ShaftPhase) {
    if (phase.sense === 'none') return nothing;
    const set = (twist: number) => {
      this.dispatchEvent(new LineEditedEvent(setIn(this.line, `shafts[${phase.shaft}].yokeTwist`, twist)));
    };
    return html`<div class="row">
      <button
        type="button"
        class="main"
        @click=${() => {
          set(phase.best);
        }}
      >
        Set the yoke so in the drawing
      </button>
      ${
        phase.spline
          ? html`<button
              type="button"
              @click=${() => {
                set(phase.spline?.yokeTwist ?? phase.best);
              }}
            >
              Set it to the nearest tooth
            </button>`
          : nothing
      }
      <span class="hint">Undo brings it back.</span>
    </div>`;
  }

  private renderTeeth(teeth: number | undefined) {
    return html`<div class="fields">
      <number-field
        label="Teeth of the spline"
        hint="Count them, where the yoke slides on a splined shaft. Empty: it turns freely."
        .decimals=${0}
        .min=${2}
        .max=${1000}
        .step=${1}
        terse
        .value=${teeth}
        @value-changed=${(event: ValueChangedEvent) => {
          this.takeTeeth(event.value);
        }}
      ></number-field>
    </div>`;
  }

  private takeTeeth(value: number | undefined): void {
    if (Number.isNaN(value)) return;
    const { splineTeeth: _, ...others } = this.measures;
    const next = value === undefined ? others : { ...others, splineTeeth: Math.round(value) };
    this.dispatchEvent(new MeasuresChangedEvent(next));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'phase-section': PhaseSection;
  }
}
