import { speedFluctuation, speedRatio, type ShaftLine, type SpeedFluctuation } from '@sternline/core';
import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import '../charts/turn-chart.js';
import '../elements/chart-frame.js';
import '../elements/data-table.js';
import type { TableData } from '../elements/data-table.js';
import { jointRows, turningSentence } from './turning-words.js';
import type { Units } from '../model/project.js';
import { formatFigure } from '../model/units.js';
import { shared } from '../styles/shared.js';

/** Steps of the curve over one turn: one for each degree. */
const STEPS = 360;

/** How unevenly the propeller turns while the motor turns evenly. */
@customElement('turning-leaf')
export class TurningLeaf extends LitElement {
  static override styles = [
    shared,
    css`
      :host {
        display: block;
      }
      .tables {
        display: flex;
        flex-wrap: wrap;
        gap: var(--gap-large) 3rem;
      }
    `,
  ];

  @property({ attribute: false }) line!: ShaftLine;
  @property() units: Units = 'metric';
  @property({ type: Boolean }) stale = false;

  protected override render() {
    const { line, units } = this;
    const angles = Float64Array.from({ length: STEPS + 1 }, (_, step) => (2 * Math.PI * step) / STEPS);
    const ratio = speedRatio(line, angles);
    const fluctuation = speedFluctuation(line);
    return html`<div class=${this.stale ? 'stale' : ''}>
      <h2>Does the propeller turn evenly?</h2>
      <p class="sentence">${turningSentence(line, { fluctuation, units })}</p>
      ${
        line.joints.length > 0
          ? html`<chart-frame
              label="Speed of the propeller over speed of the motor, through one turn"
              file="turn"
              .table=${turnTable(angles, ratio)}
            >
              <turn-chart .values=${ratio} .write=${(value: number) => value.toFixed(3)}></turn-chart>
            </chart-frame>`
          : nothing
      }
      <div class="tables">
        <data-table .table=${jointRows(line, units)}></data-table>
        <data-table .table=${orderTable(fluctuation, units)}></data-table>
      </div>
    </div>`;
  }
}

function turnTable(angles: Float64Array, ratio: Float64Array): TableData {
  return {
    caption: 'Speed ratio through one turn',
    columns: ['Motor angle, °', 'Propeller speed over motor speed'],
    rows: Array.from({ length: 73 }, (_, step) => [
      ((angles[step * 5] ?? 0) * (180 / Math.PI)).toFixed(0),
      (ratio[step * 5] ?? 1).toFixed(5),
    ]),
  };
}

function orderTable({ orders }: SpeedFluctuation, units: Units): TableData {
  return {
    caption: 'What the swing is made of',
    columns: ['Times a turn', 'Share of the speed'],
    rows: orders.map(({ order, amplitude }) => [`${order}×`, `± ${formatFigure(amplitude, 'share', units)}`]),
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'turning-leaf': TurningLeaf;
  }
}
