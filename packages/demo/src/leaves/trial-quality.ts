import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { TrialAnalysis } from '../model/analysis-types.js';
import { plainNote } from '../model/plain-note.js';
import type { Trial } from '../model/project.js';
import { shared } from '../styles/shared.js';

/** What a recording is worth: how it was taken, and what its rate shows at this speed. */
@customElement('trial-quality')
export class TrialQuality extends LitElement {
  static override styles = [
    shared,
    css`
      ul {
        margin: 0 0 var(--gap);
        padding-left: 1.25rem;
        max-width: 70ch;
        line-height: 1.5;
      }
    `,
  ];

  @property({ attribute: false }) trial: Trial | undefined;
  @property({ attribute: false }) analysis: TrialAnalysis | undefined;

  protected override render() {
    const { trial, analysis } = this;
    if (!trial || !analysis) return nothing;
    // What the recording cannot show was said with the answer already.
    const reach = analysis.reach.filter((sentence) => !analysis.diagnosis.limits.includes(sentence));
    const sentences = [...(trial.granted ?? []), ...analysis.quality.map(plainNote), ...reach];
    return html`
      <h4>How well it was taken</h4>
      <ul>
        ${sentences.map((sentence) => html`<li>${sentence}</li>`)}
      </ul>
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'trial-quality': TrialQuality;
  }
}
