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
        padding: 0.25rem 0;
      }
      li.finding:first-child {
        border-top: 2px solid var(--accent);
        padding-top: 0.75rem;
      }
      .sentence {
        margin-bottom: 0.25rem;
      }
      summary {
        font-weight: 600;
        text-decoration: none;
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
    return html`
      ${
        findings.length === 0
          ? renderNothing(analysis)
          : html`<ol>
              ${findings.map(renderFinding)}
            </ol>`
      }
      ${
        limits.length > 0
          ? html`<h4>What this recording cannot show</h4>
              <ul>
                ${limits.map((sentence) => html`<li>${sentence}</li>`)}
              </ul>`
          : nothing
      }
    `;
  }
}

function renderNothing({ diagnosis }: TrialAnalysis) {
  if (diagnosis.peaks.length > 0) {
    return html`<p class="sentence">
        ${diagnosis.peaks.length === 1 ? 'A line stands' : `${diagnosis.peaks.length} lines stand`} above the
        noise, but none points to a cause at this speed.
      </p>
      <p>Check the shaft speed above first: a cause shows only at the speed that the shaft really had.</p>`;
  }
  return html`<p class="sentence">Nothing in this recording stands above its noise.</p>
    <p>
      Either the line runs smoothly at this speed, or what shakes is beyond what this recording can show. Lay
      the phone nearer to the motor or the stern tube, record for half a minute at a steady speed, and
      compare.
    </p>`;
}

/** The strongest stands open; the others fold, so that a phone shows what to try first. */
function renderFinding(finding: Finding, index: number) {
  const lead = `${confidenceWords(finding.confidence)} (${Math.round(finding.confidence * 100)} %)`;
  const sentence = `${causeWords(finding.cause)}: ${lead}.`;
  const grounds = html`<ul>
      ${finding.evidence.map((one) => html`<li>${one}</li>`)}
    </ul>
    <p><strong>Next:</strong> ${finding.nextCheck}</p>`;
  return html`<li class="finding">
    ${
      index === 0
        ? html`<p class="sentence">${sentence}</p>
            ${grounds}`
        : html`<details>
            <summary>${sentence}</summary>
            ${grounds}
          </details>`
    }
  </li>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'trial-answer': TrialAnswer;
  }
}
