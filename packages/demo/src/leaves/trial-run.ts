import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { ShaftLine } from '@sternline/core';
import '../charts/map-chart.js';
import type { MapLevel } from '../charts/map-geometry.js';
import '../charts/spectrum-chart.js';
import '../charts/speed-chart.js';
import '../elements/chart-frame.js';
import type { SpectrumMap, TrialAnalysis, TrialCourse } from '../model/analysis-types.js';
import { courseOrders } from '../model/course-orders.js';
import { courseSentences, resonanceSentence } from '../model/course-words.js';
import { mapTable } from '../model/map-table.js';
import type { Trial, Units } from '../model/project.js';
import { shortFigure } from '../model/short-figure.js';
import { shared } from '../styles/shared.js';
import { runFigure, writeAmplitude, writeRpm } from './run-figure.js';
import type { CourseState } from './trial-courses.js';

/** Orders that a map marks at most. */
const MOST_ORDERS = 6;

/** What happens through a recording: map over time, orders against speed, what rings, and how often it knocks. */
@customElement('trial-run')
export class TrialRun extends LitElement {
  static override styles = [
    shared,
    css`
      :host {
        display: block;
      }
    `,
  ];

  @property({ attribute: false }) trial: Trial | undefined;
  @property({ attribute: false }) analysis: TrialAnalysis | undefined;
  @property({ attribute: false }) state: CourseState = { kind: 'none' };
  @property({ attribute: false }) line: ShaftLine | undefined;
  /** The channel on show; the strongest unless told. */
  @property() channel: string | undefined;
  /** rad/s, critical speeds that are predicted for the line, lowest first. */
  @property({ attribute: false }) criticals: readonly { readonly speed: number; readonly name: string }[] =
    [];
  @property() units: Units = 'metric';

  protected override render() {
    const { trial, analysis, state } = this;
    if (!trial || !analysis || state.kind === 'none') return nothing;
    const { course } = state;
    return html`
      <h4>Through the recording</h4>
      ${this.renderState()}
      ${
        course
          ? html`${courseSentences(course, this.units).map((sentence) => html`<p>${sentence}</p>`)}
            ${course.resonances.map((one) => html`<p>${resonanceSentence(one, this.units)}</p>`)}
            ${this.renderMap(course, { trial, analysis })} ${this.renderRun(course, trial)}
            ${this.renderBlows(course, { trial, analysis })}`
          : nothing
      }
    `;
  }

  private renderState() {
    const { kind, problem, course } = this.state;
    if (kind === 'working' && !course)
      return html`<p class="aside" role="status">Drawing the map over time …</p>`;
    if (kind === 'failed') return html`<p class="problem" role="alert">It could not be drawn: ${problem}</p>`;
    if (kind === 'cancelled') return html`<p class="aside">The map was cancelled with the rest.</p>`;
    return nothing;
  }

  /** The first order, what the answer names, and what else stands out, as far as an eye can follow them. */
  private ordersToMark(analysis: TrialAnalysis): number[] {
    const seen = analysis.diagnosis.orders
      .filter((one) => one.seen)
      .sort((a, b) => b.amplitude - a.amplitude);
    const wanted = [
      1,
      2,
      ...(this.line?.propeller ? [this.line.propeller.blades] : []),
      ...seen.map(({ order }) => order),
    ];
    return [...new Set(wanted)].slice(0, MOST_ORDERS).sort((a, b) => a - b);
  }

  private renderMap(course: TrialCourse, shown: { readonly trial: Trial; readonly analysis: TrialAnalysis }) {
    const { trial, analysis } = shown;
    const map = course.maps.find((one) => one.channel === this.channel) ?? this.strongest(course, analysis);
    if (!map) return html`<p class="aside">It is too short for a map over time.</p>`;
    const { sampleRate } = trial.recording;
    const { speed, part } = analysis;
    const marked = { orders: this.ordersToMark(analysis), speed, from: part.from, to: part.to, sampleRate };
    const levels = course.resonances.map(({ frequency }): MapLevel => {
      return { frequency, name: `rings at ${shortFigure(frequency)} Hz` };
    });
    return html`<chart-frame
        label=${`Map of ${map.channel} over time`}
        file=${`${trial.name}, map of ${map.channel}`}
        .table=${mapTable(map)}
        ><map-chart
          name=${`${trial.name}, map of ${map.channel}`}
          unit=${map.unit}
          .grid=${map}
          .orders=${courseOrders(course, marked)}
          .levels=${levels}
        ></map-chart
      ></chart-frame>
      <p class="aside">
        The denser the ink, the stronger. A line that climbs and falls with the shaft is an order of it
        (dotted); one that stays level is something that rings, or another machine.
      </p>`;
  }

  private strongest({ maps }: TrialCourse, { spectra }: TrialAnalysis): SpectrumMap | undefined {
    return maps.find(({ channel }) => channel === spectra[0]?.channel) ?? maps[0];
  }

  private renderRun({ track, moved, resonances }: TrialCourse, trial: Trial) {
    if (!track || !moved) return nothing;
    const { input, table, upward } = runFigure(track, { resonances, criticals: this.criticals });
    return html`<chart-frame
        label="Orders against shaft speed"
        file=${`${trial.name}, orders against speed`}
        .table=${table}
        ><speed-chart
          .input=${input}
          upward=${upward}
          label=${`${trial.name}: amplitude of each order, read-out along shaft speed`}
          .writeSpeed=${writeRpm}
          .writeValue=${writeAmplitude}
        ></speed-chart
      ></chart-frame>
      ${
        input.marks.length > 0
          ? html`<p class="aside">
              The broken uprights are where the line as entered is predicted to whirl.
            </p>`
          : nothing
      }`;
  }

  private renderBlows(
    { blows }: TrialCourse,
    shown: { readonly trial: Trial; readonly analysis: TrialAnalysis },
  ) {
    if (!blows) return nothing;
    const { trial, analysis } = shown;
    const { band } = blows;
    return html`<details>
      <summary>How often it knocks</summary>
      <chart-frame label="How often the highest tones swell" file=${`${trial.name}, blows`}
        ><spectrum-chart
          name=${`${trial.name}, blows`}
          unit=${blows.unit}
          .lines=${blows}
          .orders=${analysis.diagnosis.orders.slice(0, 6)}
          .shaftFrequency=${analysis.speed / (2 * Math.PI)}
        ></spectrum-chart
      ></chart-frame>
      <p class="aside">
        A joint that rattles or a bush that catches rings the parts blow by blow. Here the loudness of what
        lies between ${shortFigure(band.from)} and ${shortFigure(band.to)} Hz is taken apart: a peak on an
        order is that many blows a turn.
      </p>
    </details>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'trial-run': TrialRun;
  }
}
