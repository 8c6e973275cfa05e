import type { Assessment, Reason } from '@sternline/core';
import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Units } from '../model/project.js';
import { say } from '../model/say.js';
import { shared } from '../styles/shared.js';
import { VERDICT_SIGNS, verdictSentence } from './verdict-words.js';

/** The verdict in a sentence, and the reasons behind it. */
@customElement('verdict-note')
export class VerdictNote extends LitElement {
  static override styles = [
    shared,
    css`
      :host {
        display: block;
      }
      ul {
        list-style: none;
        margin: 0;
        padding: 0;
      }
      li {
        display: grid;
        grid-template-columns: 1.5rem 1fr;
        margin-bottom: 0.375rem;
        line-height: 1.45;
        max-width: 75ch;
      }
      .source {
        display: block;
      }
    `,
  ];

  @property({ attribute: false }) assessment: Assessment | undefined;
  /** Why nothing could be computed. */
  @property() failure = '';
  @property() units: Units = 'metric';
  /** Whether the figures are of an earlier state of the line. */
  @property({ type: Boolean }) stale = false;

  protected override render() {
    const { assessment, failure, units } = this;
    if (failure) return html`<p class="problem" role="alert">This line could not be computed: ${failure}</p>`;
    if (!assessment) return nothing;
    const first = assessment.reasons.find(({ severity }) => severity === assessment.verdict);
    const others = assessment.reasons.filter((reason) => reason !== first);
    return html`<div class=${this.stale ? 'stale' : ''}>
      <p class="sentence">
        <span aria-hidden="true">${VERDICT_SIGNS[assessment.verdict]}</span>
        ${verdictSentence(assessment, units)}
      </p>
      <ul>
        ${others.map((reason) => renderReason(reason, units))}
      </ul>
      ${
        assessment.reasons.length > 0
          ? html`<details>
              <summary>Where these limits come from</summary>
              <ul>
                ${[...new Set(assessment.reasons.map(({ source }) => source))].map(
                  (source) => html`<li><span aria-hidden="true">·</span><span>${source}</span></li>`,
                )}
              </ul>
            </details>`
          : nothing
      }
    </div>`;
  }
}

function renderReason(reason: Reason, units: Units) {
  return html`<li>
    <span aria-hidden="true">${VERDICT_SIGNS[reason.severity]}</span>
    <span>${say(reason, units)}</span>
  </li>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'verdict-note': VerdictNote;
  }
}
