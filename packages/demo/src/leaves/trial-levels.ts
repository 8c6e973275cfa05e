import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import '../elements/data-table.js';
import { levelSentences, levelTable, severitySentences } from '../model/level-words.js';
import type { Units } from '../model/project.js';
import { comparableTrials, historyTable } from '../model/trial-history.js';
import type { AnalysedTrial } from '../model/trial-history.js';
import { shared } from '../styles/shared.js';

/** How much a trial shakes: beside the line's other trials first, beside the zones of a standard last. */
@customElement('trial-levels')
export class TrialLevels extends LitElement {
  static override styles = [
    shared,
    css`
      data-table {
        display: block;
        margin-bottom: var(--gap);
      }
    `,
  ];

  @property({ attribute: false }) open: AnalysedTrial | undefined;
  /** Every trial that was analysed. */
  @property({ attribute: false }) others: readonly AnalysedTrial[] = [];
  @property() units: Units = 'metric';

  protected override render() {
    const { open } = this;
    if (!open) return nothing;
    const { levels, severity } = open.analysis;
    return html`
      <h4>How much it shakes</h4>
      <p>${levelSentences(levels).join(' ')}</p>
      ${this.renderHistory(open)}
      <details>
        <summary>Levels${severity ? ', and velocity beside a standard' : ''}</summary>
        <data-table .table=${levelTable(levels)}></data-table>
        ${severity ? severitySentences(severity).map((sentence) => html`<p>${sentence}</p>`) : nothing}
      </details>
    `;
  }

  private renderHistory(open: AnalysedTrial) {
    const others = comparableTrials(open, this.others);
    if (others.length === 0)
      return html`<p class="aside">
        No other trial of this line at about this speed stands beside it yet. One from the same phone in the
        same place is the best measure there is.
      </p>`;
    return html`<data-table .table=${historyTable(open, others, this.units)}></data-table>
      <p class="aside">
        Compare only what was taken with the same phone in the same
        place${open.trial.recording.sampling.kind === 'sound' ? ', at the same gain' : ''}; “Side by side”
        weighs the change against its uncertainty.
      </p>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'trial-levels': TrialLevels;
  }
}
