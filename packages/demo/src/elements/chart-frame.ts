import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { figureSvg } from '../charts/figure-svg.js';
import { saveFile } from '../charts/save-file.js';
import { shared } from '../styles/shared.js';
import './data-table.js';
import type { TableData } from './data-table.js';
import { saveFigurePng } from './save-figure-png.js';

/** A figure with its title, its numbers as a table, and ways to take both away. */
@customElement('chart-frame')
export class ChartFrame extends LitElement {
  static override styles = [
    shared,
    css`
      :host {
        display: block;
        margin: 0 0 var(--gap-large);
      }
      figure {
        margin: 0;
      }
      figcaption {
        font-weight: 600;
        margin-bottom: 0.25rem;
      }
      .tools {
        display: flex;
        flex-wrap: wrap;
        gap: 0 0.25rem;
        align-items: center;
      }
      .tools button,
      summary {
        font-size: var(--text-small);
      }
    `,
  ];

  @property() label = '';
  /** Stem of the names of saved files. */
  @property() file = 'figure';
  /** The figure's data, in full. */
  @property({ attribute: false }) table: TableData | undefined;

  protected override render() {
    return html`<figure>
      <figcaption>${this.label}</figcaption>
      <slot></slot>
      <div class="tools">
        ${
          this.table
            ? html`<details>
                <summary>The figures as a table</summary>
                <data-table .table=${this.table}></data-table>
              </details>`
            : nothing
        }
        <button type="button" class="plain" @click=${this.saveSvg}>Save SVG</button>
        <button type="button" class="plain" @click=${this.savePng}>Save PNG</button>
        <button type="button" class="plain" ?disabled=${!this.table} @click=${this.saveCsv}>Save CSV</button>
      </div>
    </figure>`;
  }

  private drawnSvg(): string | undefined {
    const drawing = this.querySelector(':scope > *')?.shadowRoot?.querySelector('svg');
    return drawing ? figureSvg(drawing, getComputedStyle(this).getPropertyValue('--paper')) : undefined;
  }

  private saveSvg(): void {
    const text = this.drawnSvg();
    if (text) saveFile(`${this.file}.svg`, { text, type: 'image/svg+xml' });
  }

  private savePng(): void {
    const text = this.drawnSvg();
    if (text) void saveFigurePng(`${this.file}.png`, text);
  }

  private saveCsv(): void {
    if (this.table) saveFile(`${this.file}.csv`, { text: csvOf(this.table), type: 'text/csv' });
  }
}

function csvOf({ columns, rows }: TableData): string {
  return [columns, ...rows].map((row) => `${row.map(csvCell).join(',')}\r\n`).join('');
}

// Thin spaces and true minus signs are for reading; a spreadsheet wants plain numbers.
function csvCell(text: string): string {
  const plain = text
    .replace(/[\u202f\u00a0]/g, ' ')
    .replace(/(\d) (?=\d{3}\b)/g, '$1')
    .replace(/^−/, '-');
  return /[",\n]/.test(plain) ? `"${plain.replace(/"/g, '""')}"` : plain;
}

declare global {
  interface HTMLElementTagNameMap {
    'chart-frame': ChartFrame;
  }
}
