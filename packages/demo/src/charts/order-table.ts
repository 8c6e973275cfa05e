import { css, html, LitElement, nothing, svg } from 'lit';
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
      .scroll {
        position: relative;
      }
      .aside {
        display: block;
      }
      th,
      td {
        padding-right: 0.625rem;
      }
      svg {
        display: block;
        width: 6rem;
        height: 1.25rem;
      }
      .bar {
        fill: var(--accent);
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
    const bars = orderBars(this.rows.map((row) => (row.seen ? row : { amplitude: 0, amplitudeError: 0 })));
    return html`<div class="scroll" tabindex="0" role="group" aria-label="Orders of shaft speed">
      <table>
        <thead>
          <tr>
            <th scope="col">Order</th>
            <th scope="col" class="figure">Frequency</th>
            <th scope="col">Peak amplitude</th>
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
      <th scope="row">${row.order}×<span class="aside">${row.driver}</span></th>
      <td class="figure">
        ${figureText(row.frequency)} Hz
        ${row.folded ? html`<span class="aside">appears at ${figureText(row.apparentFrequency)} Hz</span>` : nothing}
      </td>
      <td>${amplitudeText(row)}${bar && row.seen ? renderBar(bar) : nothing}</td>
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

/** Of an order that is not seen no more is known than that it is below what would have stood out. */
function amplitudeText({ seen, amplitude, amplitudeError, unit: name }: OrderRow): string {
  const unit = name === 'full scale' ? 'of full scale' : name;
  return seen
    ? `${figureText(amplitude)} ± ${figureText(amplitudeError, 2)} ${unit}`
    : `under ${figureText(amplitude + 2 * amplitudeError, 2)} ${unit}`;
}

function seenText(row: OrderRow): string {
  const also = row.inseparableFrom.map((order) => `${order}×`).join(', ');
  const shared = also ? `; falls together with ${also}` : '';
  return row.seen ? `yes, on ${row.channel}${shared}` : `no line of its own${shared}`;
}

declare global {
  interface HTMLElementTagNameMap {
    'order-table': OrderTable;
  }
}
