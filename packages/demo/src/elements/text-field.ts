import { css, html, LitElement } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { shared } from '../styles/shared.js';
import { TextChangedEvent } from './events.js';
import { fieldStyles } from './field-styles.js';

/** A line of text with its label. */
@customElement('text-field')
export class TextField extends LitElement {
  static override styles = [
    shared,
    fieldStyles,
    css`
      input {
        width: 100%;
      }
    `,
  ];
  static override shadowRootOptions: ShadowRootInit = {
    ...LitElement.shadowRootOptions,
    delegatesFocus: true,
  };

  @property() label = '';
  @property() value = '';
  @property() hint = '';

  protected override render() {
    return html`
      <label for="input">${this.label}</label>
      <input
        id="input"
        autocomplete="off"
        aria-describedby="hint"
        .value=${this.value}
        @change=${this.onChange}
      />
      <span id="hint" class="hint">${this.hint}</span>
    `;
  }

  private onChange(event: Event): void {
    event.stopPropagation();
    if (event.target instanceof HTMLInputElement) {
      this.dispatchEvent(new TextChangedEvent(event.target.value.trim()));
    }
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'text-field': TextField;
  }
}
