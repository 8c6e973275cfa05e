import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { ReadDelimitedOptions } from '@sternline/core';
import type { ValueChangedEvent } from '../elements/events.js';
import '../elements/number-field.js';
import type { ReadChoices } from '../model/analysis-types.js';
import { shared } from '../styles/shared.js';

type TimeUnit = NonNullable<ReadDelimitedOptions['timeUnit']>;

const TIME_UNITS: readonly (readonly [TimeUnit, string])[] = [
  ['s', 'seconds'],
  ['ms', 'milliseconds'],
  ['µs', 'microseconds'],
  ['ns', 'nanoseconds'],
  ['min', 'minutes'],
];
const UNITS = ['m/s²', 'g', 'mg', 'rad/s', '°/s'];
const RATE_CODES = ['needs-sample-rate', 'bad-time'];
const COLUMN_CODES = ['no-acceleration', 'no-such-column', 'unknown-unit', 'spectrum', 'positions', 'ragged'];

/** Asks what a file does not tell; fires `answered` when the user is done, with the answers in `answers`. */
@customElement('reading-question')
export class ReadingQuestion extends LitElement {
  static override styles = [
    shared,
    css`
      .row {
        align-items: end;
        margin-bottom: var(--gap);
      }
      select {
        font: inherit;
        color: var(--ink);
        background: var(--sheet);
        border: 1px solid var(--line);
        border-radius: var(--radius);
        min-height: var(--touch);
      }
      label {
        display: flex;
        flex-direction: column;
        font-weight: 500;
        font-size: 0.9375rem;
      }
    `,
  ];

  /** Why the reading stopped. */
  @property() code = '';
  @property({ attribute: false }) choices: ReadChoices = {};
  answers: ReadChoices = {};

  protected override willUpdate(changed: Map<string, unknown>): void {
    if (changed.has('choices') || changed.has('code')) this.answers = this.choices;
  }

  protected override render() {
    if (RATE_CODES.includes(this.code))
      return html`<div class="row">${this.renderRate()} ${this.renderGo()}</div>`;
    if (this.code === 'needs-time-unit') return this.renderTimeUnits();
    if (COLUMN_CODES.includes(this.code)) return this.renderColumns();
    return nothing;
  }

  private renderRate() {
    return html`<number-field
      label="Samples a second"
      unit="Hz"
      .value=${this.answers.sampleRate}
      .min=${0.1}
      .max=${1_000_000}
      hint="The logger’s settings show it; 50, 100, 200 and 400 are common."
      @value-changed=${(event: ValueChangedEvent) => {
        event.stopPropagation();
        const rate = event.value;
        if (rate !== undefined && !Number.isNaN(rate)) this.answers = { ...this.answers, sampleRate: rate };
      }}
    ></number-field>`;
  }

  private renderTimeUnits() {
    return html`<div class="row" role="group" aria-label="The time column counts in">
      <span>The time column counts in</span>
      ${TIME_UNITS.map(
        ([unit, name]) =>
          html`<button
            type="button"
            @click=${() => {
              this.finish({ timeUnit: unit });
            }}
          >
            ${name}
          </button>`,
      )}
    </div>`;
  }

  private renderColumns() {
    return html`<details>
      <summary>It does hold vibration: say which columns</summary>
      <div class="row">
        ${(['time', 'x', 'y', 'z'] as const).map((role) => this.renderColumn(role))}
        <label>
          Unit
          <select
            @change=${(event: Event) => {
              this.column({ unit: (event.target as HTMLSelectElement).value });
            }}
          >
            <option value="">as the file says</option>
            ${UNITS.map((unit) => html`<option>${unit}</option>`)}
          </select>
        </label>
        ${this.renderRate()} ${this.renderGo()}
      </div>
    </details>`;
  }

  private renderColumn(role: 'time' | 'x' | 'y' | 'z') {
    return html`<number-field
      label=${role === 'time' ? 'Column of time' : `Column of ${role}`}
      hint=${role === 'x' ? 'Counted from 1; one axis is enough.' : ''}
      .decimals=${0}
      @value-changed=${(event: ValueChangedEvent) => {
        event.stopPropagation();
        const place = event.value;
        if (place !== undefined && place >= 1) this.column({ [role]: Math.round(place) - 1 });
      }}
    ></number-field>`;
  }

  private renderGo() {
    return html`<button
      type="button"
      class="main"
      @click=${() => {
        this.finish({});
      }}
    >
      Read it so
    </button>`;
  }

  private column(change: NonNullable<ReadChoices['columns']>): void {
    const columns = { ...this.answers.columns, ...change };
    this.answers = { ...this.answers, columns };
  }

  private finish(last: ReadChoices): void {
    this.answers = { ...this.answers, ...last };
    this.dispatchEvent(new Event('answered'));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'reading-question': ReadingQuestion;
  }
}
