import type { Assessment, ShaftLine } from '@sternline/core';
import { html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import '../elements/data-table.js';
import type { Units } from '../model/project.js';
import { shared } from '../styles/shared.js';
import {
  bushTable,
  jointLoadTable,
  loadsSentence,
  loadSources,
  sealTable,
  shaftTable,
  torsionTable,
} from './load-words.js';
import { sectionStyles } from './section-styles.js';

/** What shafts, joints, screws, bushes and seals carry at the wanted speed, each beside its limit. */
@customElement('loads-section')
export class LoadsSection extends LitElement {
  static override styles = [shared, sectionStyles];

  @property({ attribute: false }) line!: ShaftLine;
  @property({ attribute: false }) assessment!: Assessment;
  @property({ attribute: false }) supportNames: readonly string[] = [];
  @property() units: Units = 'metric';

  protected override render() {
    const { assessment, line, units } = this;
    return html`<section aria-labelledby="loads">
      <h2 id="loads">What do shaft, screws and bushes carry?</h2>
      <p class="sentence">${loadsSentence(assessment, line, units)}</p>
      ${assessment.loads ? this.renderTables() : nothing}
      ${
        assessment.torsionalCriticals.length > 0
          ? html`<data-table .table=${torsionTable(assessment, units)}></data-table>`
          : nothing
      }
    </section>`;
  }

  private renderTables() {
    const { assessment, line, units } = this;
    const tables = [
      shaftTable(assessment, line, units),
      jointLoadTable(assessment, units),
      bushTable(assessment, this.supportNames, units),
      sealTable(assessment, units),
    ];
    return html`${tables.map((table) => (table.rows.length > 0 ? html`<data-table .table=${table}></data-table>` : nothing))}
      <details>
        <summary>Where these limits come from</summary>
        <ul>
          ${loadSources(assessment).map((source) => html`<li>${source}</li>`)}
        </ul>
      </details>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'loads-section': LoadsSection;
  }
}
