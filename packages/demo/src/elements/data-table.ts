import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { shared } from '../styles/shared.js';

/** A table as plain text: the first cell of each row names the row. */
export interface TableData {
  readonly caption: string;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** A table of figures; every column after the first is set to the right. */
@customElement('data-table')
export class DataTable extends LitElement {
  static override styles = [shared];

  @property({ attribute: false }) table: TableData | undefined;

  protected override render() {
    const { table } = this;
    if (!table) return nothing;
    return html`<div class="scroll" tabindex="0" role="region" aria-label=${table.caption}>
      <table>
        <caption>
          ${table.caption}
        </caption>
        <thead>
          <tr>
            ${table.columns.map(
              (column, index) => html`<th scope="col" class=${index > 0 ? 'figure' : ''}>${column}</th>`,
            )}
          </tr>
        </thead>
        <tbody>
          ${table.rows.map(
            (row) =>
              html`<tr>
                ${row.map(renderCell)}
              </tr>`,
          )}
        </tbody>
      </table>
    </div>`;
  }
}

function renderCell(text: string, index: number): TemplateResult {
  return index === 0 ? html`<th scope="row">${text}</th>` : html`<td class="figure">${text}</td>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'data-table': DataTable;
  }
}
