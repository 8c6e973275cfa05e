import { css, html, LitElement } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { shared } from '../styles/shared.js';
import type { Choice } from './choice-field.js';
import { ChoiceChangedEvent } from './events.js';

/** A row of tabs: arrow keys move along it, and it scrolls sideways where it does not fit. */
@customElement('tab-bar')
export class TabBar extends LitElement {
  static override styles = [
    shared,
    css`
      :host {
        display: block;
        min-width: 0;
      }
      [role='tablist'] {
        display: flex;
        overflow-x: auto;
        scrollbar-width: none;
        gap: 0.125rem;
      }
      [role='tab'] {
        flex: none;
        border: 0;
        border-bottom: 3px solid transparent;
        background: none;
        border-radius: 0;
        padding-inline: 1rem;
      }
      [role='tab']:focus-visible {
        outline-offset: -3px;
      }
      [role='tab'][aria-selected='true'] {
        border-bottom-color: var(--accent);
        font-weight: 600;
      }
    `,
  ];

  @property() label = '';
  @property() value = '';
  @property({ attribute: false }) tabs: readonly Choice[] = [];

  protected override render() {
    return html`<div role="tablist" aria-label=${this.label} @keydown=${this.onKeydown}>
      ${this.tabs.map(
        ({ value, label }) =>
          html`<button
            type="button"
            role="tab"
            id=${value}
            tabindex=${value === this.value ? '0' : '-1'}
            aria-selected=${value === this.value ? 'true' : 'false'}
            @click=${() => {
              this.choose(value);
            }}
          >
            ${label}
          </button>`,
      )}
    </div>`;
  }

  protected override updated(): void {
    this.renderRoot
      .querySelector('[aria-selected="true"]')
      ?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }

  private onKeydown(event: KeyboardEvent): void {
    const here = this.tabs.findIndex(({ value }) => value === this.value);
    const count = this.tabs.length;
    const places: Readonly<Record<string, number>> = {
      ArrowRight: (here + 1) % count,
      ArrowLeft: (here + count - 1) % count,
      Home: 0,
      End: count - 1,
    };
    const next = this.tabs[places[event.key] ?? -1];
    if (!next) return;
    event.preventDefault();
    this.choose(next.value);
    this.renderRoot.querySelector<HTMLElement>(`#${next.value}`)?.focus();
  }

  private choose(value: string): void {
    this.dispatchEvent(new ChoiceChangedEvent(value));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'tab-bar': TabBar;
  }
}
