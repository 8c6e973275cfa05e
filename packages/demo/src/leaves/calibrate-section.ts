import type { LineCalibration, MeasuredResonance, ShaftLine } from '@sternline/core';
import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import '../elements/choice-field.js';
import '../elements/data-table.js';
import type { ChoiceChangedEvent, ValueChangedEvent } from '../elements/events.js';
import '../elements/number-field.js';
import type { LineAdvice } from '../model/advice.js';
import type { Units } from '../model/project.js';
import { fromScreen, toScreen } from '../model/units.js';
import { shared } from '../styles/shared.js';
import { AdviceChangedEvent, LineAddedEvent } from './advice-events.js';
import { adviceProgress } from './advice-progress.js';
import { AdviceTask } from './advice-task.js';
import { bushWords, calibrationSentence, matchTable, resonanceName } from './calibrate-words.js';
import { sectionStyles } from './section-styles.js';

const NONE: readonly MeasuredResonance[] = [];

const MEDIA = [
  { value: 'water', label: 'in water' },
  { value: 'air', label: 'in air' },
];

/** Hz and rad/s with which a new entry starts: none is taken into the fit before it is written over. */
type Entry = MeasuredResonance;

/** Resonances that were measured, and the line fitted to them: how firmly its bushes really hold. */
@customElement('calibrate-section')
export class CalibrateSection extends LitElement {
  static override styles = [
    shared,
    sectionStyles,
    css`
      .entry {
        display: flex;
        flex-wrap: wrap;
        gap: 0.75rem 1.5rem;
        align-items: start;
        margin-bottom: 1rem;
      }
      .entry button {
        align-self: center;
      }
    `,
  ];

  @property({ attribute: false }) line!: ShaftLine;
  @property({ attribute: false }) advice: LineAdvice = {};
  /** rad/s */
  @property({ type: Number }) wantedSpeed = 0;
  @property() units: Units = 'metric';

  private readonly task = new AdviceTask(this, 'calibrate');

  private get resonances(): readonly Entry[] {
    return this.advice.calibration?.resonances ?? NONE;
  }

  protected override render() {
    const { resonances } = this;
    return html`<section aria-labelledby="calibrate">
      <h2 id="calibrate">Fit the line to what was measured</h2>
      ${
        resonances.length === 0
          ? html`<p class="sentence">
              How firmly bushes hold is the largest unknown of a line. One resonance that you measured, by a
              tap or in a run-up, tells more of it than any drawing.
            </p>`
          : this.renderOutcome(resonances)
      }
      <details ?open=${resonances.length > 0}>
        <summary>The resonances that were measured</summary>
        <p>
          <strong>Tap:</strong> battery out, strike the shaft lightly, record the ring, and read its
          frequency. <strong>Run-up:</strong> model held fast and propeller guarded, open the throttle slowly,
          pass the loudest place in seconds, and read the speed there.
        </p>
        ${resonances.map((resonance, index) => this.renderEntry(resonance, index))}
        <div class="row">
          <button
            type="button"
            @click=${() => {
              this.add({ frequency: 60, medium: 'air' });
            }}
          >
            Add a tap test
          </button>
          <button
            type="button"
            @click=${() => {
              this.add({ speed: this.wantedSpeed, order: 1, medium: 'water' });
            }}
          >
            Add a run-up
          </button>
        </div>
      </details>
    </section>`;
  }

  private renderOutcome(resonances: readonly Entry[]) {
    const state = this.task.of([this.line, resonances], () => ({
      line: this.line,
      options: { resonances },
    }));
    return html`${adviceProgress(state, this.task, 'Fitting the bushes')}
    ${state.answer ? html`<div class=${state.kind === 'working' ? 'stale' : ''}>${this.renderFit(state.answer, { resonances, settled: state.kind === 'done' })}</div>` : nothing}`;
  }

  private renderFit(
    fit: LineCalibration,
    { resonances, settled }: { readonly resonances: readonly Entry[]; readonly settled: boolean },
  ) {
    const { units } = this;
    const others = fit.supported ? fit.reasons : fit.reasons.slice(1);
    return html`
      <p class="sentence" aria-live="polite">${calibrationSentence(fit, this.wantedSpeed, units)}</p>
      ${others.map((reason) => html`<p>${reason}</p>`)}
      <ul>
        ${fit.parameters.map((parameter) => html`<li>${bushWords(parameter, fit.designed)}</li>`)}
      </ul>
      ${
        fit.supported
          ? html`<div class="row">
              <button
                type="button"
                class="main"
                ?disabled=${!settled}
                @click=${() => {
                  this.keep(fit);
                }}
              >
                Keep the line as built
              </button>
              <span class="hint">Adds it as a layout beside the line as designed; undo takes it away.</span>
            </div>`
          : nothing
      }
      <details>
        <summary>The fit in figures</summary>
        ${fit.matches.length > 0 ? html`<data-table .table=${matchTable(fit, resonances, units)}></data-table>` : nothing}
        <ul>
          ${fit.parameters.map(({ sentence }) => html`<li>${sentence}</li>`)}
        </ul>
      </details>
    `;
  }

  private renderEntry(resonance: Entry, index: number) {
    const name = `Resonance ${index + 1}`;
    return html`<div class="entry" role="group" aria-label=${`${name}, ${resonanceName(resonance)}`}>
      ${resonance.speed === undefined ? this.renderTap(resonance, index) : this.renderRunUp(resonance, index)}
      <choice-field
        label="Propeller"
        .value=${resonance.medium ?? 'water'}
        .choices=${MEDIA}
        @choice-changed=${(event: ChoiceChangedEvent) => {
          this.put(index, { ...resonance, medium: event.choice === 'air' ? 'air' : 'water' });
        }}
      ></choice-field>
      <button
        type="button"
        aria-label=${`Remove ${name.toLowerCase()}`}
        @click=${() => {
          this.change(this.resonances.filter((_, place) => place !== index));
        }}
      >
        Remove
      </button>
    </div>`;
  }

  private renderTap(resonance: Extract<Entry, { speed?: undefined }>, index: number) {
    const { frequency, error = 0.01 * frequency } = resonance;
    return html`${this.renderNumber(
      'Rings at',
      'Hz',
      { value: frequency, hint: 'The lowest clear ring.' },
      (value) => {
        const { error: _, ...others } = resonance;
        this.put(index, { ...others, frequency: value });
      },
    )}
    ${this.renderNumber('May be off by', 'Hz', { value: error, hint: 'One standard error.' }, (value) => {
      this.put(index, { ...resonance, error: value });
    })}`;
  }

  private renderRunUp(resonance: Extract<Entry, { frequency?: undefined }>, index: number) {
    const { speed, order = 1, error = 0.01 * speed } = resonance;
    const shown = (value: number) => toScreen(value, 'speed', this.units);
    const si = (value: number) => fromScreen(value, 'speed', this.units);
    return html`${this.renderNumber(
      'Loudest at',
      'rpm',
      { value: shown(speed), decimals: 0, hint: 'Shaft speed there.' },
      (value) => {
        const { error: _, ...others } = resonance;
        this.put(index, { ...others, speed: si(value) });
      },
    )}
    ${this.renderNumber(
      'May be off by',
      'rpm',
      { value: shown(error), decimals: 0, hint: 'One standard error.' },
      (value) => {
        this.put(index, { ...resonance, error: si(value) });
      },
    )}
    ${this.renderNumber(
      'Order that stood out',
      '×',
      { value: order, decimals: 1, hint: '1 once a turn, 2 twice.' },
      (value) => {
        this.put(index, { ...resonance, order: value });
      },
    )}`;
  }

  private renderNumber(
    label: string,
    unit: string,
    { value, hint, decimals = 1 }: { value: number; hint: string; decimals?: number },
    take: (value: number) => void,
  ) {
    return html`<number-field
      label=${label}
      unit=${unit}
      hint=${hint}
      .min=${0.001}
      .max=${1e6}
      terse
      .decimals=${decimals}
      .value=${value}
      @value-changed=${(event: ValueChangedEvent) => {
        event.stopPropagation();
        if (event.value !== undefined && event.value > 0) take(event.value);
      }}
    ></number-field>`;
  }

  private keep({ built, designed }: LineCalibration): void {
    this.dispatchEvent(new LineAddedEvent({ ...built, name: `${designed.name}, as built` }));
  }

  private add(entry: Entry): void {
    this.change([...this.resonances, entry]);
  }

  private put(index: number, entry: Entry): void {
    this.change(this.resonances.map((old, place) => (place === index ? entry : old)));
  }

  private change(resonances: readonly Entry[]): void {
    const { calibration: _, ...others } = this.advice;
    this.dispatchEvent(
      new AdviceChangedEvent(resonances.length > 0 ? { ...others, calibration: { resonances } } : others),
    );
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'calibrate-section': CalibrateSection;
  }
}
