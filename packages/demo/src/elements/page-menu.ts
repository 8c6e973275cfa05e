import { css, html, LitElement } from 'lit';
import { customElement, property, query } from 'lit/decorators.js';
import { shared } from '../styles/shared.js';

/** A button that opens a sheet of further controls; Escape or a click elsewhere closes it. */
@customElement('page-menu')
export class PageMenu extends LitElement {
  static override styles = [
    shared,
    css`
      :host {
        display: block;
      }
      [popover] {
        position: fixed;
        inset: 3.25rem 0.5rem auto auto;
        margin: 0;
        width: min(24rem, calc(100vw - 1rem));
        max-height: calc(100dvh - 4rem);
        overflow: auto;
        border: 1.5px solid var(--ink);
        background: var(--sheet);
        color: var(--ink);
        padding: 1rem;
      }
    `,
  ];

  @property() label = '';
  @query('[popover]') private readonly sheet!: HTMLElement;

  /** Closes the sheet, once what it offers was chosen. */
  close(): void {
    this.sheet.hidePopover();
  }

  protected override render() {
    return html`<button type="button" popovertarget="sheet">${this.label}</button>
      <div id="sheet" popover role="dialog" aria-label=${this.label}><slot></slot></div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'page-menu': PageMenu;
  }
}
