import type { ComparedCell, ComparedLine, LineComparison, LineComparisonRow } from '@sternline/core';
import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { ProjectLine, Units } from '../model/project.js';
import { formatFigure } from '../model/units.js';
import { shared } from '../styles/shared.js';
import { changeWords } from './compare-words.js';
import { LineOpenedEvent } from './leaf-events.js';
import { VERDICT_SIGNS, verdictName } from './verdict-words.js';

/** Layouts figure by figure; each after the first with its change against that. */
@customElement('compare-table')
export class CompareTable extends LitElement {
  static override styles = [
    shared,
    css`
      thead th {
        font-size: var(--text);
        min-width: 9rem;
        max-width: 14rem;
      }
      tbody th {
        min-width: 7rem;
        max-width: 16rem;
        position: sticky;
        left: 0;
        background: var(--sheet);
      }
      td {
        padding-right: 1.5rem;
      }
      td .aside {
        display: block;
      }
      .best {
        font-weight: 600;
        text-decoration: underline;
        text-decoration-thickness: 2px;
        text-underline-offset: 0.2em;
      }
      .open {
        text-align: start;
        padding-inline: 0.5rem;
      }
    `,
  ];

  @property({ attribute: false }) comparison: LineComparison | undefined;
  /** In the order of the comparison. */
  @property({ attribute: false }) entries: readonly ProjectLine[] = [];
  @property() openLine = '';
  /** rad/s */
  @property({ type: Number }) wantedSpeed = 0;
  @property() units: Units = 'metric';

  protected override render() {
    const { comparison, entries } = this;
    if (!comparison) return nothing;
    const at = formatFigure(this.wantedSpeed, 'speed', this.units);
    return html`<div class="scroll" tabindex="0" role="region" aria-label="Layouts side by side">
        <table>
          <caption class="unseen">
            Layouts side by side at ${at}
          </caption>
          <thead>
            <tr>
              <td></td>
              ${entries.map((entry) => this.renderHead(entry))}
            </tr>
          </thead>
          <tbody>
            <tr>
              <th scope="row">At ${at}</th>
              ${comparison.lines.map((line) => html`<td>${verdictCell(line)}</td>`)}
            </tr>
            ${comparison.rows.map((row) => this.renderRow(row))}
          </tbody>
        </table>
      </div>
      <p class="hint">
        Best of a row: underlined and marked ★. Changes are against the first layout. A range holds 90 of 100
        lines whose measures are off by as much as stated.
      </p>`;
  }

  private renderHead({ id, line }: ProjectLine): TemplateResult {
    return html`<th scope="col">
      <button
        type="button"
        class="plain open"
        aria-current=${id === this.openLine ? 'true' : 'false'}
        title="Open this layout"
        @click=${() => this.dispatchEvent(new LineOpenedEvent(id))}
      >
        ${line.name}
      </button>
    </th>`;
  }

  private renderRow(row: LineComparisonRow): TemplateResult {
    return html`<tr>
      <th scope="row">${row.name}</th>
      ${row.cells.map((cell, index) => this.renderCell(cell, { row, best: row.best.includes(index) }))}
    </tr>`;
  }

  private renderCell(
    cell: ComparedCell,
    { row, best }: { readonly row: LineComparisonRow; readonly best: boolean },
  ): TemplateResult {
    const { value, spread } = cell;
    const write = (si: number) => formatFigure(si, row.quantity, this.units);
    const [low, high] = spread ? [write(spread.low), write(spread.high)] : ['', ''];
    const change = changeWords(cell, row.quantity, this.units);
    return html`<td>
      <span class=${best ? 'best' : ''}
        >${value === undefined ? 'none' : write(value)}${best ? ' ★' : ''}</span
      >
      ${low === high ? nothing : html`<span class="aside">${low} to ${high}</span>`}
      ${change && cell !== row.cells[0] ? html`<span class="aside">${change}</span>` : nothing}
    </td>`;
  }
}

function verdictCell({ verdict, assessment, chances }: ComparedLine): TemplateResult {
  const sure = chances ? chances[verdict] : 1;
  return html`${VERDICT_SIGNS[verdict]} ${verdictName(assessment)}
  ${sure < 0.995 ? html`<span class="aside">in ${Math.round(100 * sure)} of 100</span>` : nothing}`;
}

declare global {
  interface HTMLElementTagNameMap {
    'compare-table': CompareTable;
  }
}
