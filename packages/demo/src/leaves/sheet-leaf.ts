import type { Assessment, LineAxes, ShaftLine } from '@sternline/core';
import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import '../elements/data-table.js';
import { drillingMarks } from '../model/drilling-marks.js';
import { measuredAxes } from '../model/measured-axes.js';
import type { LineMeasures, MeasuredPoints } from '../model/measures.js';
import type { Units } from '../model/project.js';
import { shimsFrom } from '../model/shim-readings.js';
import { shoppingList } from '../model/shopping-list.js';
import { shared } from '../styles/shared.js';
import { drillingSentence, drillingTable } from './drilling-words.js';
import { QuietValue } from './quiet-value.js';
import { sheetStyles } from './sheet-styles.js';
import {
  CAUTIONS,
  checkSteps,
  runSteps,
  settingSteps,
  sheetBands,
  sheetSentence,
  type SheetStep,
} from './sheet-words.js';
import { shimSentence } from './shim-words.js';

/** What to buy, drill, shim and check for the open layout, for the bench: two pages on paper. */
@customElement('sheet-leaf')
export class SheetLeaf extends LitElement {
  static override styles = [shared, sheetStyles];

  @property({ attribute: false }) line!: ShaftLine;
  @property({ attribute: false }) measures: LineMeasures = {};
  @property({ attribute: false }) assessment: Assessment | undefined;
  /** rad/s, the wanted speed. */
  @property({ type: Number }) speed = 0;
  @property() project = '';
  @property() units: Units = 'metric';
  @property({ type: Boolean }) stale = false;

  private readonly axes = new QuietValue(this, axesOf);

  protected override render() {
    const { line, assessment, units } = this;
    return html`<article class=${this.stale ? 'stale' : ''}>
      <header>
        <div>
          <h2>Work sheet</h2>
          <p class="hint">${this.project} · ${line.name}</p>
        </div>
        <button
          type="button"
          class="main unprinted"
          @click=${() => {
            window.print();
          }}
        >
          Print
        </button>
      </header>
      <p class="sentence">${sheetSentence(line, assessment, units)}</p>
      <p class="estimates">
        Speeds, throttles, loads and angles on this sheet are estimates from the data entered, not
        measurements. Where people, money or a rule depends on them, a qualified engineer and the local code
        decide.
      </p>
      <div class="page">
        ${this.renderBuy()} ${this.renderDrill()} ${this.renderShim()}
        ${this.renderSteps('4 · Set', settingSteps(line, this.measures, units))}
      </div>
      <div class="page second">
        ${this.renderSteps('5 · Check, battery off', checkSteps(line, units))}
        ${assessment ? this.renderRun(assessment) : nothing}
        <section>
          <h3>Found on the bench</h3>
          <div class="ruled" aria-hidden="true"><i></i><i></i><i></i></div>
          <p class="hint">Date, conditions, what it did, what was changed.</p>
        </section>
      </div>
    </article>`;
  }

  private renderBuy() {
    return html`<section>
      <h3>1 · Buy</h3>
      <table>
        <caption>
          Lengths are as drawn, to the centres of the joints: take off what the joints take up.
        </caption>
        <thead>
          <tr>
            <th scope="col">Part</th>
            <th scope="col" class="figure">Number</th>
            <th scope="col">As</th>
          </tr>
        </thead>
        <tbody>
          ${shoppingList(this.line, this.measures, this.units).map(
            ({ count, what, details }) =>
              html`<tr>
                <th scope="row">${what}</th>
                <td class="figure">${count}</td>
                <td>${details}</td>
              </tr>`,
          )}
        </tbody>
      </table>
    </section>`;
  }

  private renderDrill() {
    const { units, measures, line } = this;
    const bends = line.joints.filter(({ kind }) => kind !== 'rigid').length;
    const axes = this.axes.of(measures.points, bends);
    const plan = measures.drilling ?? { bulkheads: [] };
    const marks = axes ? drillingMarks(axes.tube, plan) : [];
    return html`<section>
      <h3>2 · Drill</h3>
      ${
        marks.length > 0
          ? html`<p>
                Pilot from the marks, check with a straight rod, then open up along the axis of the tube.
              </p>
              <data-table .table=${drillingTable(marks, units)}></data-table>`
          : html`<p>
              ${drillingSentence({ axis: axes !== undefined, bends, plan, marks }, units).replace(' above', ' in the Line leaf')}
            </p>`
      }
    </section>`;
  }

  private renderShim() {
    const { measures, speed, units } = this;
    const outcome = measures.shims ? shimsFrom(measures.shims, speed) : undefined;
    const text = outcome
      ? shimSentence(outcome, units)
      : 'Read the coupling on a rigid dummy and enter the readings in the Line leaf; the shims then stand here.';
    return html`<section>
      <h3>3 · Shim</h3>
      <p>${text}</p>
      <p class="caution"><strong>!</strong> ${CAUTIONS['by hand']} The readings turn both shafts.</p>
    </section>`;
  }

  private renderRun(assessment: Assessment) {
    const { line, units } = this;
    const bands = sheetBands(line, assessment, units);
    return html`${this.renderSteps('6 · First runs', runSteps(assessment, units))}
    ${
      bands.length > 0
        ? html`<section>
            <data-table
              .table=${{ caption: 'Bands to pass within seconds (estimates)', columns: ['Band', 'Shaft speed', 'Throttle'], rows: bands }}
            ></data-table>
          </section>`
        : nothing
    }`;
  }

  private renderSteps(title: string, steps: readonly SheetStep[]): TemplateResult {
    return html`<section>
      <h3>${title}</h3>
      <ul>
        ${steps.map(
          ({ text, turns }) =>
            html`<li>
              <span class="box" aria-hidden="true"></span>
              <span>
                ${text}
                ${turns ? html`<span class="caution"><strong>!</strong> ${CAUTIONS[turns]}</span>` : nothing}
              </span>
            </li>`,
        )}
      </ul>
    </section>`;
  }
}

function axesOf(points: MeasuredPoints | undefined, bends: number): LineAxes | undefined {
  const outcome = points && (bends === 1 || bends === 2) ? measuredAxes(points, bends) : undefined;
  return outcome?.kind === 'axes' ? outcome.axes : undefined;
}

declare global {
  interface HTMLElementTagNameMap {
    'sheet-leaf': SheetLeaf;
  }
}
