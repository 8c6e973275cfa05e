import { css, html, LitElement } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { shared } from '../styles/shared.js';
import { MeasureChangedEvent, type ValueChangedEvent } from './events.js';
import { fieldStyles } from './field-styles.js';
import './number-field.js';

/** A measured number with the most that it may be off, and a line on where to measure it. */
@customElement('measure-field')
export class MeasureField extends LitElement {
  static override styles = [
    shared,
    fieldStyles,
    css`
      .pair {
        display: flex;
        align-items: baseline;
        gap: 0.375rem;
        --field-width: 5.25rem;
      }
      .off {
        --field-width: 3.75rem;
      }
    `,
  ];

  @property() label = '';
  /** In the unit shown; undefined leaves the field empty. */
  @property({ attribute: false }) value: number | undefined;
  /** In the unit shown, at least 0. */
  @property({ type: Number }) tolerance = 0;
  @property() unit = '';
  @property() hint = '';
  @property({ type: Number }) decimals = 2;

  protected override render() {
    const { label, hint } = this;
    return html`
      <span class="label" aria-hidden="true">${label}</span>
      <span class="pair">
        <number-field
          compact
          label=${hint ? `${label}. ${hint}` : label}
          .value=${this.value}
          .decimals=${this.decimals}
          @value-changed=${(event: ValueChangedEvent) => {
            this.take(event, { value: event.value, tolerance: this.tolerance });
          }}
        ></number-field>
        <span aria-hidden="true">±</span>
        <number-field
          class="off"
          compact
          label=${`${label}: may be off by`}
          unit=${this.unit}
          .min=${0}
          .value=${this.tolerance}
          .decimals=${this.decimals}
          @value-changed=${(event: ValueChangedEvent) => {
            this.take(event, { value: this.value, tolerance: event.value ?? 0 });
          }}
        ></number-field>
      </span>
      <span class="hint" aria-hidden="true">${hint}</span>
    `;
  }

  // A text that is no number stands there with its problem beside it, and the last measure stays.
  private take(event: Event, { value, tolerance }: { value: number | undefined; tolerance: number }): void {
    event.stopPropagation();
    if (Number.isNaN(value) || Number.isNaN(tolerance)) return;
    this.dispatchEvent(new MeasureChangedEvent(value, tolerance));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'measure-field': MeasureField;
  }
}
