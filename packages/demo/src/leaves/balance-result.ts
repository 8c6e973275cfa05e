import { html, LitElement } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import '../charts/balance-circles.js';
import '../charts/balance-propeller.js';
import type { NamedMass } from '../charts/balance-propeller.js';
import '../elements/chart-frame.js';
import '../elements/choice-field.js';
import type { TableData } from '../elements/data-table.js';
import { EMPTY_BALANCE, TRIAL_RUNS, type BalanceBook } from '../model/advice.js';
import type { BalanceResult } from '../model/balance-walk.js';
import type { Units } from '../model/project.js';
import { formatFigure } from '../model/units.js';
import { shared } from '../styles/shared.js';
import { balanceStyles } from './balance-styles.js';
import { placeWords, splitSentence, writeAmplitude } from './balance-words.js';
import { sectionStyles } from './section-styles.js';

const BY = [
  { value: 'adding', label: 'putting mass on' },
  { value: 'removing', label: 'taking mass off' },
];

/** The correction of a balancing: on the blades, and in the circles that it comes from. */
@customElement('balance-result')
export class BalanceResultView extends LitElement {
  static override styles = [shared, sectionStyles, balanceStyles];

  @property({ attribute: false }) result!: BalanceResult;
  @property({ attribute: false }) book: BalanceBook = EMPTY_BALANCE;
  @property({ type: Number }) blades = 4;
  /** m, of the propeller. */
  @property({ type: Number }) diameter = 0;
  /** m, at which the correction sits. */
  @property({ type: Number }) radius = 0;
  @property() units: Units = 'metric';

  protected override render() {
    const { result, book, blades, units } = this;
    const masses = this.masses();
    return html`
      <p>${splitSentence(result, book, { blades, units })}</p>
      ${result.balance.warnings.map(({ sentence }) => html`<p class="problem">${sentence}</p>`)}
      <div class="fields">
        <choice-field label="Correct by" .value=${book.by} .choices=${BY}></choice-field>
      </div>
      <div class="side">
        <balance-propeller
          .blades=${blades}
          .diameter=${this.diameter}
          .radius=${this.radius}
          .masses=${masses}
          .largest=${Math.max(book.mass ?? 0, ...masses.map(({ mass }) => mass))}
          label="The propeller from astern with the correction on it"
        ></balance-propeller>
        <div class="circles">${this.renderCircles()}</div>
      </div>
    `;
  }

  private masses(): NamedMass[] {
    const sign = this.book.by === 'removing' ? '−' : '';
    return this.result.split.parts.map(({ mass, angle }) => ({
      ...{ mass, angle, kind: 'correction' as const },
      name: `${sign}${formatFigure(mass, 'mass', this.units)}`,
    }));
  }

  private renderCircles() {
    const { book, units } = this;
    const { mass, angle, sensitivity } = this.result.balance;
    const trials = TRIAL_RUNS.map((run, i) => ({
      angle: book.angles[i] ?? 0,
      amplitude: book.runs[run]?.amplitude ?? 0,
    }));
    const readings = {
      initial: book.runs.found?.amplitude ?? 0,
      ...{ trials, angle, effect: sensitivity * (book.mass ?? 0) },
    };
    const names = ['as found', ...trials.map((trial) => `mass at ${placeWords(trial.angle)}`)];
    const place = formatFigure(angle, 'angle', units);
    return html`<chart-frame
        label="One circle for each run"
        file="balance-circles"
        .table=${this.table(names)}
      >
        <balance-circles
          .readings=${readings}
          .names=${names}
          answer=${`${formatFigure(mass, 'mass', units)} at ${place}`}
          label=${`Four circles that meet at ${place} clockwise from blade 1; the correction there is ${formatFigure(mass, 'mass', units)}`}
        ></balance-circles>
      </chart-frame>
      <p class="aside">
        Where the three dashed circles meet, the arrow points at the place of the correction. As the arrow is
        to the full circle’s radius, so is the trial mass to the correction.
      </p>`;
  }

  private table(names: readonly string[]): TableData {
    const { runs, unit } = this.book;
    return {
      caption: 'The four runs',
      columns: ['Run', 'Amplitude of the first order'],
      rows: (['found', ...TRIAL_RUNS] as const).map((run, i) => [
        names[i] ?? '',
        writeAmplitude(runs[run]?.amplitude ?? 0, unit),
      ]),
    };
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'balance-result': BalanceResultView;
  }
}
