import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Finding } from '@sternline/core';
import { findingSentence } from '../model/answer-sentence.js';
import type { TrialAnalysis } from '../model/analysis-types.js';
import { shared } from '../styles/shared.js';

/** Why the answer is what it is, what to try next, what else it may be, and what the recording cannot say. */
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
        border-top: 0;
        padding-top: 0;
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
              </ol>
              ${renderCaution(findings)}`
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
    return html`<p>
      Check the shaft speed first: a cause shows only at the speed that the shaft really had.
    </p>`;
  }
  return html`<p>
    Either the line runs smoothly at this speed, or what shakes is beyond what this recording can show. Lay
    the phone nearer to the motor or the stern tube, record for half a minute at a steady speed, and compare.
  </p>`;
}

/** Said once for all checks: the most careful of them holds what the others say. */
function renderCaution(findings: readonly Finding[]) {
  const [most] = findings.flatMap(({ caution }) => caution ?? []).sort((a, b) => b.length - a.length);
  return most === undefined ? nothing : html`<p><strong>Take care:</strong> ${most}</p>`;
}

/** The strongest was said above and stands open; the others fold, so that a phone shows what to try first. */
function renderFinding(finding: Finding, index: number) {
  const grounds = html`<ul>
      ${finding.evidence.map((one) => html`<li>${one}</li>`)}
    </ul>
    <p><strong>Next:</strong> ${finding.nextCheck}</p>`;
  return html`<li class="finding">
    ${
      index === 0
        ? grounds
        : html`<details>
            <summary>${findingSentence(finding)}</summary>
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
