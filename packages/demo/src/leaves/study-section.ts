import type { Assessment, ShaftLine } from '@sternline/core';
import { html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import '../charts/bounds-chart.js';
import '../charts/speed-chart.js';
import '../elements/chart-frame.js';
import type { LineStudy } from '../model/line-study.js';
import type { Units } from '../model/project.js';
import { formatFigure, fromScreen, toScreen, writeNumber } from '../model/units.js';
import { shared } from '../styles/shared.js';
import { LateStudy } from './late-study.js';
import { sectionStyles } from './section-styles.js';
import { boundsSentence, clearanceSentence, mapSentence } from './study-words.js';
import {
  boundRows,
  boundTable,
  clearanceInput,
  clearanceTable,
  mapInput,
  mapTable,
} from './whirl-figures.js';

/** The costly part of the whirl: bounds, map, and the whirl against the clearance of the tube. */
@customElement('study-section')
export class StudySection extends LitElement {
  static override styles = [shared, sectionStyles];

  @property({ attribute: false }) line!: ShaftLine;
  @property({ attribute: false }) assessment!: Assessment;
  /** rad/s, the wanted speed once the hand has let go. */
  @property({ type: Number }) settledSpeed = 0;
  /** rad/s, up to which to look. */
  @property({ type: Number }) top = 0;
  @property() units: Units = 'metric';

  private readonly study = new LateStudy(this);

  protected override render() {
    const { line, settledSpeed: speed, top } = this;
    const study = this.study.of(line, { speed, top });
    if (this.study.failure)
      return html`<p class="problem" role="alert">The whirl could not be studied: ${this.study.failure}</p>`;
    if (!study)
      return html`<section>
        <p class="sentence" role="status">Working out how far the bushes matter …</p>
      </section>`;
    const earlier = !this.study.isOf(line);
    return html`<div class=${earlier ? 'stale' : ''}>
      ${earlier ? html`<p role="status">Working it out for the line as it is now …</p>` : nothing}
      ${this.renderBounds(study)} ${this.renderMap(study)} ${this.renderClearance(study)}
    </div>`;
  }

  private renderBounds(study: LineStudy) {
    const { units, assessment } = this;
    const sentence = boundsSentence(study, assessment, units);
    return html`<section aria-labelledby="bounds">
      <h2 id="bounds">How sure are these speeds?</h2>
      <p class="sentence">${sentence}</p>
      <chart-frame
        label="From bushes that let the shaft tilt to bushes that hold its direction"
        file="bounds"
        .table=${boundTable(study, units)}
      >
        <bounds-chart
          label=${sentence}
          .rows=${boundRows(study, units)}
          .wanted=${toScreen(assessment.speed, 'speed', units)}
          .write=${writeSpeed}
        ></bounds-chart>
      </chart-frame>
    </section>`;
  }

  private renderMap(study: LineStudy) {
    const { units, assessment, top } = this;
    return html`<section aria-labelledby="map">
      <h2 id="map">What meets what?</h2>
      <p class="sentence">${mapSentence(assessment, units)}</p>
      <chart-frame
        label="Whirl frequencies against shaft speed; dashed whirls against the turning"
        file="whirl-map"
        .table=${mapTable(study, units)}
      >
        <speed-chart
          label="Shaft speed on the map"
          upward="Hz"
          .input=${mapInput(study, assessment, { top, units })}
          .writeSpeed=${this.speedWords}
          .writeValue=${(value: number) => `${writeNumber(value, 'frequency')} Hz`}
        ></speed-chart>
      </chart-frame>
    </section>`;
  }

  private renderClearance({ clearance }: LineStudy) {
    const { units, line, assessment, top } = this;
    const { speed } = assessment;
    const input = clearance?.driven ? clearanceInput(clearance, { line, wanted: speed, units }) : undefined;
    return html`<section aria-labelledby="clearance">
      <h2 id="clearance">Does it touch the tube?</h2>
      <p class="sentence">${clearanceSentence(clearance, { speed, top }, units)}</p>
      ${
        clearance && input
          ? html`<chart-frame
                label="How far the shaft swings sideways in its tube"
                file="clearance"
                .table=${clearanceTable(clearance, { line, units })}
              >
                <speed-chart
                  label="Shaft speed, against the reach of the shaft"
                  upward=${units === 'inch' ? 'in' : 'mm'}
                  .input=${input}
                  .writeSpeed=${this.speedWords}
                  .writeValue=${(value: number) => formatFigure(fromScreen(value, 'length', units), 'length', units)}
                ></speed-chart>
              </chart-frame>
              <p class="hint">
                Driven by the unbalance and run-out entered and by the couples of the joints, with bushes that
                let the shaft tilt and 2 % of critical damping. A shaft that sags or sits off centre in its
                tube touches sooner.
              </p>`
          : nothing
      }
    </section>`;
  }

  private readonly speedWords = (speed: number): string =>
    formatFigure(fromScreen(speed, 'speed', this.units), 'speed', this.units);
}

function writeSpeed(speed: number): string {
  return writeNumber(speed, 'speed');
}

declare global {
  interface HTMLElementTagNameMap {
    'study-section': StudySection;
  }
}
