import { css, html, LitElement, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { shared } from '../styles/shared.js';
import { figureText } from './figure-text.js';
import { orderBars } from './order-geometry.js';
import type { OrderBar } from './order-geometry.js';

/** One order as a recording shows it. */
export interface OrderRow {
  readonly order: number;
  /** What usually drives it: unbalance, joints, blades. */
  readonly driver: string;
  /** Hz */
  readonly frequency: number;
  /** Hz */
  readonly apparentFrequency: number;
  readonly folded: boolean;
  readonly amplitude: number;
  readonly amplitudeError: number;
  readonly unit: string;
  readonly channel: string;
  readonly seen: boolean;
  readonly inseparableFrom: readonly number[];
}

/** The orders of shaft speed in figures, each with a bar on one scale. */
@customElement('order-table')
export class OrderTable extends LitElement {
  static override styles = [
    shared,
    css`
      svg {
        display: block;
        width: 6rem;
        height: 1.5rem;
      }
      .bar {
        fill: var(--accent);
      }
      .weak .bar {
        fill: var(--line-thin);
      }
      .whisker {
        stroke: var(--ink);
        stroke-width: 1.5;
      }
      .weak td,
      .weak th {
        color: var(--ink-soft);
      }
    `,
  ];

  @property({ attribute: false }) rows: readonly OrderRow[] = [];

  protected override render() {
    const bars = orderBars(this.rows);
    return html`<div class="scroll" tabindex="0" role="group" aria-label="Orders of shaft speed">
      <table>
        <thead>
          <tr>
            <th scope="col">Order</th>
            <th scope="col" class="figure">True, Hz</th>
            <th scope="col" class="figure">Appears at, Hz</th>
            <th scope="col" class="figure">Amplitude</th>
            <th scope="col"><span class="unseen">Bar</span></th>
            <th scope="col">Seen?</th>
          </tr>
        </thead>
        <tbody>
          ${this.rows.map((row, index) => this.renderRow(row, bars[index]))}
        </tbody>
      </table>
    </div>`;
  }

  private renderRow(row: OrderRow, bar: OrderBar | undefined) {
    return html`<tr class=${row.seen ? '' : 'weak'}>
      <th scope="row">${row.order}× ${row.driver ? html`<span class="aside">${row.driver}</span>` : ''}</th>
      <td class="figure">${figureText(row.frequency)}</td>
      <td class="figure">${figureText(row.apparentFrequency)}${row.folded ? ' folded' : ''}</td>
      <td class="figure">${figureText(row.amplitude)} ± ${figureText(row.amplitudeError, 2)} ${row.unit}</td>
      <td>${bar ? renderBar(bar) : ''}</td>
      <td>${seenText(row)}</td>
    </tr>`;
  }
}

function renderBar({ length, whisker }: OrderBar) {
  const [from, to] = whisker.map((share) => share * 94 + 1);
  return html`<svg viewBox="0 0 96 24" aria-hidden="true">
    ${svg`<rect class="bar" x="1" y="7" width=${length * 94} height="10"></rect>
      <path class="whisker" d=${`M${from},12H${to}M${from},8V16M${to},8V16`}></path>`}
  </svg>`;
}

function seenText(row: OrderRow): string {
  const also = row.inseparableFrom.map((order) => `${order}×`).join(', ');
  const shared = also ? `; cannot be told from ${also}` : '';
  return row.seen ? `yes, on ${row.channel}${shared}` : `no, lost in the noise${shared}`;
}

declare global {
  interface HTMLElementTagNameMap {
    'order-table': OrderTable;
  }
}
