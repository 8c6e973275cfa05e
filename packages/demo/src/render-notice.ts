import { html, nothing } from 'lit';

/**
 * A notice over the page, until it is closed.
 *
 * @param notice - what to tell; empty for none
 * @param close - puts it away
 */
export function renderNotice(notice: string, close: () => void) {
  return html`<div role="status">
    ${
      notice
        ? html`<div class="notice">
            <p>${notice}</p>
            <button type="button" @click=${close}>Close</button>
          </div>`
        : nothing
    }
  </div>`;
}
