import { html } from 'lit';

/**
 * What to take care of before something spins.
 *
 * @param title - before what
 * @param sentences - the core's words
 */
export function renderSafety(title: string, sentences: readonly string[]) {
  return html`<div class="safety">
    <p>${title}</p>
    <ul>
      ${sentences.map((sentence) => html`<li>${sentence}</li>`)}
    </ul>
  </div>`;
}
