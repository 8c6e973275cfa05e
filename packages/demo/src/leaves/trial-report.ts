import { html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { ShaftLine } from '@sternline/core';
import { TrialChangedEvent, TrialRemovedEvent } from '../elements/events.js';
import type { TextChangedEvent } from '../elements/events.js';
import '../elements/text-field.js';
import '../elements/progress-bar.js';
import { answerSentence } from '../model/answer-sentence.js';
import type { TrialAnalysis, TrialCourse } from '../model/analysis-types.js';
import { runAnswer } from '../model/course-words.js';
import type { Trial, Units } from '../model/project.js';
import type { PredictedCritical } from '../model/predicted-criticals.js';
import { readingSentence } from '../model/reading-words.js';
import type { AnalysedTrial } from '../model/trial-history.js';
import { formatFigure } from '../model/units.js';
import { shared } from '../styles/shared.js';
import type { AnalysisState } from './trial-analyses.js';
import './trial-answer.js';
import type { CourseState } from './trial-courses.js';
import './trial-figures.js';
import type { ChannelChosenEvent } from './trial-figures.js';
import './trial-levels.js';
import './trial-pair.js';
import type { Align, Separate } from './trial-pair.js';
import './trial-quality.js';
import './trial-reading.js';
import { trialReportStyles } from './trial-report-styles.js';
import './trial-run.js';
import './trial-speed.js';
import './trial-tap.js';
import type { ReadTaps } from './trial-tap.js';
import type { SpeedToldEvent } from './trial-speed.js';

/** The analysis that was cancelled or failed is to be made again. */
export class AnalyseAgainEvent extends Event {
  static readonly type = 'analyse-again';
  constructor() {
    super(AnalyseAgainEvent.type, { bubbles: true, composed: true });
  }
}

/** Work beyond the analysis, done where the recordings are. */
export interface TrialWork {
  readonly align: Align;
  readonly separate: Separate;
  readonly tap: ReadTaps;
}

/** How the last good answer looks while another is made, and where none could be. */
const MARKS = { waiting: 'busy', working: 'busy', done: '', cancelled: 'stale', failed: 'stale' } as const;

/** One trial: what was read, at which speed, what it says, and the figures behind it. */
@customElement('trial-report')
export class TrialReport extends LitElement {
  static override styles = [shared, trialReportStyles];

  @property({ attribute: false }) trial: Trial | undefined;
  @property({ attribute: false }) state: AnalysisState = { kind: 'waiting' };
  @property({ attribute: false }) line: ShaftLine | undefined;
  /** rad/s */
  @property({ type: Number }) wantedSpeed = 0;
  @property() units: Units = 'metric';
  @property({ type: Boolean }) rereadable = false;
  @property({ attribute: false }) course: CourseState = { kind: 'none' };
  /** Every trial that was analysed. */
  @property({ attribute: false }) others: readonly AnalysedTrial[] = [];
  @property({ attribute: false }) trials: readonly Trial[] = [];
  @property({ attribute: false }) work: TrialWork | undefined;
  @property({ attribute: false }) criticals: readonly PredictedCritical[] = [];
  @state() private channel: string | undefined;

  protected override render() {
    const { trial, state } = this;
    if (!trial) return nothing;
    const shown = state.analysis === undefined ? '' : MARKS[state.kind];
    return html`
      <h3>${trial.name}</h3>
      ${this.renderProgress()}
      <div class=${shown}>
        ${state.analysis ? html`<p class="sentence" role="status">${this.answer(state.analysis)}</p>` : nothing}
        <p>${readingSentence(trial.recording)}</p>
        <trial-speed
          .speed=${trial.speed}
          .wantedSpeed=${this.wantedSpeed}
          units=${this.units}
          .analysis=${state.analysis}
          ?simulated=${trial.simulated}
          @speed-told=${this.onSpeed}
        ></trial-speed>
        <section>
          ${state.analysis ? html`<h4>Why, and what to try next</h4>` : nothing}
          <trial-answer .analysis=${state.analysis}></trial-answer>
        </section>
        ${this.renderFigures(trial)}
        <section>
          <trial-quality .trial=${trial} .analysis=${state.analysis}></trial-quality>
          <trial-reading .recording=${trial.recording} ?rereadable=${this.rereadable}></trial-reading>
          ${this.renderPair(trial)}
        </section>
      </div>
      ${this.renderFacts(trial)}
    `;
  }

  /** What happens through the recording, once it is known of the one that is shown. */
  private get run(): TrialCourse | undefined {
    return this.course.kind === 'done' ? this.course.course : undefined;
  }

  /** Of a run the map says most; of steady running the spectrum. */
  private renderFigures(trial: Trial) {
    const { analysis } = this.state;
    if (!analysis) return nothing;
    const run = html`<section>
      <trial-run
        .trial=${trial}
        .analysis=${analysis}
        .state=${this.course}
        .line=${this.line}
        .channel=${this.channel}
        .criticals=${this.criticals}
        units=${this.units}
      ></trial-run>
    </section>`;
    const moved = this.run?.moved === true;
    return html`${moved ? run : nothing}
      <trial-figures
        .trial=${trial}
        .analysis=${analysis}
        .line=${this.line}
        .channel=${this.channel}
        @channel-chosen=${(event: ChannelChosenEvent) => {
          event.stopPropagation();
          this.channel = event.channel;
        }}
      ></trial-figures>
      ${moved ? nothing : run}
      <section>
        <trial-levels .open=${{ trial, analysis }} .others=${this.others} units=${this.units}></trial-levels>
      </section>`;
  }

  private renderPair(trial: Trial) {
    const others = this.trials.filter((one) => one.lineId === trial.lineId && one.id !== trial.id);
    return html`<trial-pair
        .trial=${trial}
        .others=${others}
        .stretch=${trial.part}
        .align=${this.work?.align}
        .separate=${this.work?.separate}
      ></trial-pair>
      <trial-tap .trial=${trial} .read=${this.work?.tap}></trial-tap>`;
  }

  /** Where nobody knows the speed, the answer is no more than a supposition and says so; in a run there is no one speed. */
  private answer({ diagnosis, speed, speedFrom }: TrialAnalysis): string {
    const ran = this.run && runAnswer(this.run, this.units);
    if (ran) return ran;
    const sentence = answerSentence(diagnosis);
    if (speedFrom !== 'wanted' || diagnosis.findings.length === 0) return sentence;
    return `If the shaft turned at ${formatFigure(speed, 'speed', this.units)}, ${uncapital(sentence)}`;
  }

  private renderProgress() {
    const { kind, progress, problem } = this.state;
    const again = html`<button type="button" @click=${() => this.dispatchEvent(new AnalyseAgainEvent())}>
      Analyse it again
    </button>`;
    switch (kind) {
      case 'waiting':
      case 'working':
        return html`<progress-bar
          label=${progress?.doing ?? 'Waiting for its turn'}
          .share=${progress?.share ?? 0}
        ></progress-bar>`;
      case 'cancelled':
        return html`<p class="row" role="status">The analysis was cancelled. ${again}</p>`;
      case 'failed':
        return html`<p class="row problem" role="alert">It could not be analysed: ${problem} ${again}</p>`;
      case 'done':
        return nothing;
    }
  }

  private renderFacts(trial: Trial) {
    return html`<section class="facts">
      <text-field
        label="Name of the trial"
        value=${trial.name}
        @text-changed=${(event: TextChangedEvent) => {
          event.stopPropagation();
          this.change({ name: event.text || trial.name });
        }}
      ></text-field>
      <text-field
        label="Note"
        hint="Bench or water, where the phone lay."
        value=${trial.note}
        @text-changed=${(event: TextChangedEvent) => {
          event.stopPropagation();
          this.change({ note: event.text });
        }}
      ></text-field>
      <button type="button" @click=${() => this.dispatchEvent(new TrialRemovedEvent(trial.id))}>
        Remove this trial
      </button>
    </section>`;
  }

  private onSpeed(event: SpeedToldEvent): void {
    event.stopPropagation();
    const { trial } = this;
    if (!trial) return;
    const { speed, ...rest } = trial;
    if (event.speed === speed) return;
    this.dispatchEvent(
      new TrialChangedEvent<Trial>(event.speed === undefined ? rest : { ...rest, speed: event.speed }),
    );
  }

  private change(change: Partial<Trial>): void {
    if (this.trial) this.dispatchEvent(new TrialChangedEvent<Trial>({ ...this.trial, ...change }));
  }
}

function uncapital(sentence: string): string {
  return sentence.charAt(0).toLowerCase() + sentence.slice(1);
}

declare global {
  interface HTMLElementTagNameMap {
    'trial-report': TrialReport;
  }
  interface HTMLElementEventMap {
    'analyse-again': AnalyseAgainEvent;
  }
}
