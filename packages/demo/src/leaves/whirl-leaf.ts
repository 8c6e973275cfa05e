import type { Assessment, LineCriticalSpeed, ShaftLine } from '@sternline/core';
import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { ModeChosenEvent } from '../charts/chart-events.js';
import { lineParts } from '../charts/line-parts.js';
import '../charts/mode-chart.js';
import '../elements/chart-frame.js';
import '../elements/data-table.js';
import type { TableData } from '../elements/data-table.js';
import { rulerTop } from '../model/judge-line.js';
import type { Units } from '../model/project.js';
import { say } from '../model/say.js';
import { formatFigure } from '../model/units.js';
import { shared } from '../styles/shared.js';
import './loads-section.js';
import { sectionStyles } from './section-styles.js';
import { stiffeningChanges, stiffenSentence, stiffenTable } from './stiffen-words.js';
import './study-section.js';
import { EXCITATION_NAMES, modeMarks, modesToShow, ORDINALS, whirlSentence } from './whirl-words.js';

/** rad/s: 500 rpm, so that a small edit does not move the scale. */
const SCALE_STEP = (500 * Math.PI) / 30;

/** At which speeds the line whirls, what drives it there, and how it bends. */
@customElement('whirl-leaf')
export class WhirlLeaf extends LitElement {
  static override styles = [
    shared,
    sectionStyles,
    css`
      td label {
        display: flex;
        align-items: center;
        gap: 0.5rem;
        min-height: var(--touch);
        cursor: pointer;
      }
      input[type='radio'] {
        accent-color: var(--accent);
        width: 1.25rem;
        height: 1.25rem;
      }
      tr.shown {
        box-shadow: inset 4px 0 0 var(--accent);
      }
      td,
      th {
        vertical-align: middle;
      }
      td:first-child {
        padding-left: 0.75rem;
      }
    `,
  ];

  @property({ attribute: false }) line!: ShaftLine;
  @property({ attribute: false }) assessment: Assessment | undefined;
  @property() units: Units = 'metric';
  @property({ type: Boolean }) stale = false;
  /** Place among the modes, lowest first. */
  @property({ type: Number }) mode = 0;
  /** rad/s, the wanted speed before a hand began to move it: costly figures stay still meanwhile. */
  @property({ type: Number }) settledSpeed = 0;

  protected override render() {
    const { assessment, units } = this;
    if (!assessment) return html`<p class="problem">The whirl of this line could not be computed.</p>`;
    const modes = modesToShow(assessment);
    const shown = modes[this.mode] ?? modes[0];
    return html`<div class=${this.stale ? 'stale' : ''}>
      <h2>At which speeds does it whirl?</h2>
      <p class="sentence">${whirlSentence(assessment, units)}</p>
      ${shown ? this.renderMode(shown) : nothing} ${this.renderModes(modes, shown)}
      ${shown ? this.renderStiffening(shown) : nothing}
      <data-table .table=${bandTable(assessment, units)}></data-table>
      <study-section
        .line=${this.line}
        .assessment=${assessment}
        .settledSpeed=${this.settledSpeed}
        .top=${this.studyTop(modes)}
        .units=${units}
      ></study-section>
      <loads-section
        .line=${this.line}
        .assessment=${assessment}
        .supportNames=${supportNames(this.line)}
        .units=${units}
      ></loads-section>
    </div>`;
  }

  /** Far enough that the first whirl is in sight, even where the motor does not reach it. */
  private studyTop(modes: readonly LineCriticalSpeed[]): number {
    const first = modes.find(({ excitation }) => excitation === 'unbalance')?.speed ?? 0;
    const reach = Math.max(rulerTop(this.line, this.settledSpeed), 1.15 * first);
    return Math.ceil(reach / SCALE_STEP) * SCALE_STEP;
  }

  private renderStiffening(critical: LineCriticalSpeed) {
    const changes = stiffeningChanges(this.line, critical);
    return html`<p>${stiffenSentence(changes, this.units)}</p>
      <details>
        <summary>What each part does to this speed</summary>
        <data-table .table=${stiffenTable(changes, this.units)}></data-table>
      </details>`;
  }

  private renderMode(critical: LineCriticalSpeed) {
    const { shape } = critical;
    const speed = formatFigure(critical.speed, 'speed', this.units);
    const label = `How it bends: ${ORDINALS[critical.mode] ?? 'a higher'} whirl, driven by ${EXCITATION_NAMES[critical.excitation]} at ${speed}`;
    return html`<chart-frame label=${label} file="mode" .table=${shapeTable(critical, this.units)}>
      <mode-chart
        label=${label}
        .shaft=${shape.shaft}
        .station=${shape.station}
        .displacement=${shape.displacement}
        .marks=${modeMarks(this.line)}
      ></mode-chart>
    </chart-frame>`;
  }

  private renderModes(modes: readonly LineCriticalSpeed[], shown: LineCriticalSpeed | undefined) {
    return html`<fieldset>
      <legend class="unseen">Mode to draw</legend>
      <div class="scroll" tabindex="0" role="region" aria-label="Critical speeds">
        <table>
          <caption>
            Critical speeds, lowest first
          </caption>
          <thead>
            <tr>
              <th scope="col">Draw</th>
              <th scope="col" class="figure">Shaft speed</th>
              <th scope="col">Driven by</th>
              <th scope="col" class="figure">Mode</th>
              <th scope="col">Whirl</th>
              <th scope="col" class="figure">Shakes at</th>
            </tr>
          </thead>
          <tbody>
            ${modes.map((critical, index) => this.renderRow(critical, { index, shown: critical === shown }))}
          </tbody>
        </table>
      </div>
    </fieldset>`;
  }

  private renderRow(critical: LineCriticalSpeed, { index, shown }: { index: number; shown: boolean }) {
    const { units } = this;
    const speed = formatFigure(critical.speed, 'speed', units);
    return html`<tr class=${shown ? 'shown' : ''}>
      <td>
        <label>
          <input
            type="radio"
            name="mode"
            .checked=${shown}
            @change=${() => {
              this.dispatchEvent(new ModeChosenEvent(index));
            }}
          />
          <span class="unseen">mode at ${speed}</span>
        </label>
      </td>
      <td class="figure">${speed}</td>
      <td>${EXCITATION_NAMES[critical.excitation]}, ${critical.order}×</td>
      <td class="figure">${critical.mode}</td>
      <td>${critical.whirl}</td>
      <td class="figure">
        ${formatFigure((critical.order * critical.speed) / (2 * Math.PI), 'frequency', units)}
      </td>
    </tr>`;
  }
}

/** Names of the supports, shaft after shaft in the order in which the line lists them. */
function supportNames(line: ShaftLine): string[] {
  const named = new Map(lineParts(line).map(({ id, name }) => [id, name]));
  return line.shafts.flatMap((shaft, index) =>
    shaft.supports.map((_, place) => named.get(`support-${index}-${place}`) ?? ''),
  );
}

function bandTable({ avoidBands }: Assessment, units: Units): TableData {
  return {
    caption: 'Bands to avoid',
    columns: ['Band', 'From', 'To', 'Kept clear on either side'],
    rows: avoidBands.map((band) => [
      say(band, units).split(':')[0] ?? '',
      formatFigure(band.from, 'speed', units),
      formatFigure(band.to, 'speed', units),
      formatFigure(band.margin, 'share', units),
    ]),
  };
}

function shapeTable({ shape }: LineCriticalSpeed, units: Units): TableData {
  return {
    caption: 'Shape of the mode, its largest movement taken as 1',
    columns: ['Place along the line', 'Movement'],
    rows: Array.from(shape.station, (station, index) => [
      formatFigure(station, 'length', units),
      (shape.displacement[index] ?? 0).toFixed(3).replace('-', '−'),
    ]),
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'whirl-leaf': WhirlLeaf;
  }
}
