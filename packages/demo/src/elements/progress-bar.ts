import { css, html, LitElement } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { shared } from '../styles/shared.js';

/** The cancel button of a progress bar was pressed. */
export class CancelledEvent extends Event {
  static readonly type = 'cancelled';
  constructor() {
    super(CancelledEvent.type, { bubbles: true, composed: true });
  }
}

/** How far a piece of work has come, in words and as a bar, with a button that stops it. */
@customElement('progress-bar')
export class ProgressBar extends LitElement {
  static override styles = [
    shared,
    css`
      :host {
        display: flex;
        flex-wrap: wrap;
        gap: var(--gap) 0.75rem;
        align-items: center;
      }
      progress {
        flex: 1 1 8rem;
        accent-color: var(--accent);
      }
      span {
        flex: 1 1 12rem;
      }
    `,
  ];

  /** What is being done. */
  @property() label = '';
  /** 0 … 1; absent where it cannot be known. */
  @property({ type: Number }) share: number | undefined;

  protected override render() {
    const bar =
      this.share === undefined
        ? html`<progress aria-label=${this.label}></progress>`
        : html`<progress aria-label=${this.label} max="1" .value=${this.share}></progress>`;
    return html`<span role="status">${this.label}</span>${bar}
      <button type="button" @click=${() => this.dispatchEvent(new CancelledEvent())}>Cancel</button>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'progress-bar': ProgressBar;
  }
  interface HTMLElementEventMap {
    cancelled: CancelledEvent;
  }
}
