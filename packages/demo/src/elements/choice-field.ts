import { html, LitElement } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { shared } from '../styles/shared.js';
import { ChoiceChangedEvent } from './events.js';
import { fieldStyles } from './field-styles.js';

/** One of a choice field's choices. */
export interface Choice {
  readonly value: string;
  readonly label: string;
}

/** A labelled list to choose one of. */
@customElement('choice-field')
export class ChoiceField extends LitElement {
  static override styles = [shared, fieldStyles];
  static override shadowRootOptions: ShadowRootInit = {
    ...LitElement.shadowRootOptions,
    delegatesFocus: true,
  };

  @property() label = '';
  @property() value = '';
  @property() hint = '';
  @property() error = '';
  @property({ attribute: false }) choices: readonly Choice[] = [];
  /** Leaves the label to screen readers, where the place says it already. */
  @property({ type: Boolean }) compact = false;

  protected override render() {
    return html`
      <label class=${this.compact ? 'unseen' : ''} for="select">${this.label}</label>
      <select
        id="select"
        aria-describedby="hint problem"
        aria-invalid=${this.error ? 'true' : 'false'}
        .value=${this.value}
        @change=${this.onChange}
      >
        ${this.choices.map(
          ({ value, label }) =>
            html`<option value=${value} ?selected=${value === this.value}>${label}</option>`,
        )}
      </select>
      <span id="hint" class="hint">${this.hint}</span>
      <span id="problem" class="problem" role="alert">${this.error}</span>
    `;
  }

  private onChange(event: Event): void {
    event.stopPropagation();
    if (event.target instanceof HTMLSelectElement) {
      this.dispatchEvent(new ChoiceChangedEvent(event.target.value));
    }
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'choice-field': ChoiceField;
  }
}
