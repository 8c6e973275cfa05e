import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Finding } from '@sternline/core';
import { causeWords, confidenceWords } from '../model/finding-words.js';
import type { TrialAnalysis } from '../model/analysis-types.js';
import { shared } from '../styles/shared.js';

/** What a recording says, the strongest cause first, and what it cannot say. */
@customElement('trial-answer')
export class TrialAnswer extends LitElement {
  static override styles = [
    shared,
    css`
      ol {
        list-style: none;
        margin: 0;
        padding: 0;
      }
      li.finding {
        border-top: 1px solid var(--line-thin);
        padding: 0.75rem 0 0.25rem;
      }
      li.finding:first-child {
        border-top: 2px solid var(--accent);
      }
      .sentence {
        margin-bottom: 0.25rem;
      }
      li.finding:not(:first-child) .sentence {
        font-size: var(--text);
        font-weight: 600;
      }
      ul {
        margin: 0 0 var(--gap);
        padding-left: 1.25rem;
        max-width: 70ch;
        line-height: 1.5;
      }
    `,
  ];

  @property({ attribute: false }) analysis: TrialAnalysis | undefined;

  protected override render() {
    const { analysis } = this;
    if (!analysis) return nothing;
    const { findings, limits } = analysis.diagnosis;
    const unseen = [...new Set([...analysis.reach, ...limits])];
    return html`
      ${
        findings.length === 0
          ? renderNothing()
          : html`<ol>
              ${findings.map(renderFinding)}
            </ol>`
      }
      ${findings.length > 0 ? renderCautions() : nothing}
      ${
        unseen.length > 0
          ? html`<h4>What this recording can and cannot show</h4>
              <ul>
                ${unseen.map((sentence) => html`<li>${sentence}</li>`)}
              </ul>`
          : nothing
      }
    `;
  }
}

function renderNothing() {
  return html`<p class="sentence">Nothing in this recording stands above its noise.</p>
    <p>
      Either the line runs smoothly at this speed, or what shakes is beyond what this recording can show. Lay
      the phone nearer to the motor or the stern tube, record for half a minute at a steady speed, and
      compare.
    </p>`;
}

function renderFinding(finding: Finding) {
  const cause = causeWords(finding.cause);
  const lead = `${confidenceWords(finding.confidence)} (${Math.round(finding.confidence * 100)} %)`;
  return html`<li class="finding">
    <p class="sentence">${cause}: ${lead}.</p>
    <ul>
      ${finding.evidence.map((sentence) => html`<li>${sentence}</li>`)}
    </ul>
    <p><strong>Next:</strong> ${finding.nextCheck}</p>
  </li>`;
}

function renderCautions() {
  return html`<p class="aside">
    Before you run or touch it: secure the model, guard or take off the propeller, keep eyes, fingers and
    loose clothes clear, disconnect the battery before touching, and pass through a shaking speed in seconds
    rather than dwell on it. Dry bushes heat.
  </p>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'trial-answer': TrialAnswer;
  }
}
