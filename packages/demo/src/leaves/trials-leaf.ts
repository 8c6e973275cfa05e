import { html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { ShaftLine } from '@sternline/core';
import { SizeController } from '../charts/size-controller.js';
import type { StretchChosenEvent } from '../charts/waveform-chart.js';
import type { FilesChosenEvent } from '../elements/drop-zone.js';
import { LevelsMeasuredEvent, TrialChangedEvent, TrialsAddedEvent } from '../elements/events.js';
import { scrollToTop } from '../elements/scroll-to-top.js';
import { AnalysisClient } from '../model/analysis-client.js';
import type { LineAdvice } from '../model/advice.js';
import type { AnalysisChoices, TrialAnalysis } from '../model/analysis-types.js';
import { predictedCriticals } from '../model/predicted-criticals.js';
import type { Trial, Units } from '../model/project.js';
import type { RecordingPart } from '../model/recording-part.js';
import { startWorker } from '../model/start-worker.js';
import { trialFromRecording } from '../model/trial-from-recording.js';
import type { AnalysedTrial } from '../model/trial-history.js';
import { formatFigure } from '../model/units.js';
import { shared } from '../styles/shared.js';
import { FileReadings } from './file-readings.js';
import type { ReadFile } from './file-readings.js';
import { TrialAnalyses } from './trial-analyses.js';
import { TrialCourses } from './trial-courses.js';
import './trial-intake.js';
import type { PendingEvent } from './trial-intake.js';
import './trial-recorder.js';
import type { RecordedEvent } from './trial-recorder.js';
import type { ReadAgainEvent } from './trial-reading.js';
import './trial-report.js';
import type { TrialWork } from './trial-report.js';
import './trials-advice.js';
import { trialsLeafStyles } from './trials-leaf-styles.js';

/** What is this buzz? Recordings in, causes out, the strongest first. */
@customElement('trials-leaf')
export class TrialsLeaf extends LitElement {
  static override styles = [shared, trialsLeafStyles];

  @property({ attribute: false }) trials: readonly Trial[] = [];
  @property({ attribute: false }) line: ShaftLine | undefined;
  @property() lineId = '';
  @property({ attribute: false }) advice: LineAdvice | undefined;
  /** rad/s */
  @property({ type: Number }) wantedSpeed = 0;
  @property() units: Units = 'metric';

  @state() private openId: string | undefined;

  private readonly size = new SizeController(this);
  /** The files that trials of this visit were read from, to be read again with other choices. */
  private readonly files = new Map<string, File>();
  private readonly client = new AnalysisClient(typeof Worker === 'undefined' ? undefined : startWorker);
  private readonly analyses = new TrialAnalyses(this, this.client, (trial, analysis) => {
    this.tellLevels(trial, analysis);
  });
  private readonly courses = new TrialCourses(this, this.client);
  private readonly readings = new FileReadings(this, this.client, {
    choices: (trialId) => this.choicesFor(this.trials.find((trial) => trial.id === trialId)),
    done: (read) => {
      this.keep(read);
    },
  });

  /** Reads recordings that were dropped on the page, pasted or shared to it. */
  addFiles(files: readonly File[]): void {
    this.readings.add(files);
  }

  private get open(): Trial | undefined {
    const own = this.trials.filter((trial) => trial.lineId === this.lineId);
    return this.trials.find((trial) => trial.id === this.openId) ?? own[0] ?? this.trials[0];
  }

  protected override willUpdate(): void {
    const { open } = this;
    // Out of sight, an edit of the line or the wanted speed costs no analysis; in sight it is caught up with.
    if (open && this.size.width > 0) this.analyses.request(open, this.choicesFor(open));
    if (open && this.size.width > 0) this.requestCourse(open);
    // The ruler shows the levels of every trial; they do not hang on the line, so once is enough.
    for (const trial of this.trials) {
      const fresh = this.analyses.stateOf(trial.id).kind === 'waiting';
      if (fresh && trial.speed !== undefined) this.analyses.request(trial, this.choicesFor(trial));
    }
  }

  /** The answer first; what happens through the recording is worked out once it stands there. */
  private requestCourse(open: Trial): void {
    const { kind, analysis } = this.analyses.stateOf(open.id);
    if (kind === 'done' && analysis) this.courses.request(open, this.choicesFor(open), analysis);
  }

  protected override render() {
    const { open } = this;
    return html`
      <h2>What is this buzz?</h2>
      <p class="sentence">Put in a recording of a trial and read what it is and what to try next.</p>
      <trial-intake
        .pending=${this.readings.pending}
        @files-chosen=${(event: FilesChosenEvent) => {
          event.stopPropagation();
          this.addFiles(event.files);
        }}
        @pending=${(event: PendingEvent) => {
          this.readings.answer(event.key, event.choices);
        }}
        @cancelled=${this.onCancelled}
      ></trial-intake>
      <details class="recorder">
        <summary>Record with this device</summary>
        <trial-recorder
          .wantedSpeed=${this.wantedSpeed}
          .line=${this.line}
          @recorded=${(event: RecordedEvent) => {
            event.stopPropagation();
            for (const { file, granted } of event.made) this.readings.add([file], { granted });
          }}
        ></trial-recorder>
      </details>
      <div class="holder">
        <div class="bench">${this.renderList(open)} ${open ? this.renderReport(open) : nothing}</div>
      </div>
      <trials-advice
        .line=${this.line}
        .lineId=${this.lineId}
        .advice=${this.advice}
        .trials=${this.trials}
        .wantedSpeed=${this.wantedSpeed}
        units=${this.units}
      ></trials-advice>
    `;
  }

  private renderList(open: Trial | undefined) {
    if (this.trials.length === 0) return html`<p class="aside">No trial yet.</p>`;
    const [own, others] = [true, false].map((wanted) =>
      this.trials.filter((trial) => (trial.lineId === this.lineId) === wanted),
    );
    return html`<nav aria-label="Trials">
      <h3>Trials of this layout</h3>
      ${this.renderTrials(own ?? [], open)}
      ${
        others && others.length > 0
          ? html`<h3>Trials of other layouts</h3>
              ${this.renderTrials(others, open)}`
          : nothing
      }
    </nav>`;
  }

  private renderTrials(trials: readonly Trial[], open: Trial | undefined) {
    if (trials.length === 0) return html`<p class="aside">None yet.</p>`;
    return html`<ul class="list">
      ${trials.map(
        (trial) =>
          html`<li>
            <button
              type="button"
              aria-current=${trial === open ? 'true' : 'false'}
              @click=${() => (this.openId = trial.id)}
            >
              ${trial.name}<span class="aside">${this.trialFacts(trial)}</span>
            </button>
          </li>`,
      )}
    </ul>`;
  }

  private trialFacts(trial: Trial): string {
    const speed =
      trial.speed === undefined ? 'speed not told' : formatFigure(trial.speed, 'speed', this.units);
    return [speed, trial.simulated ? 'simulated' : '', trial.note].filter(Boolean).join(' · ');
  }

  private renderReport(open: Trial) {
    return html`<trial-report
      .trial=${open}
      .state=${this.analyses.stateOf(open.id)}
      .course=${this.courses.stateOf(open.id)}
      .others=${this.analysed}
      .trials=${this.trials}
      .work=${this.work}
      .line=${open.lineId === this.lineId ? this.line : undefined}
      .criticals=${open.lineId === this.lineId ? predictedCriticals(this.line, this.wantedSpeed) : []}
      .wantedSpeed=${this.wantedSpeed}
      units=${this.units}
      ?rereadable=${this.files.has(open.id)}
      @stretch-chosen=${(event: StretchChosenEvent) => {
        this.choosePart(open, event.stretch);
      }}
      @read-again=${(event: ReadAgainEvent) => {
        this.readAgain(open, event);
      }}
      @analyse-again=${() => {
        this.analyses.repeat(open.id);
        this.courses.repeat(open.id);
      }}
      @cancelled=${this.onCancelled}
    ></trial-report>`;
  }

  private get analysed(): AnalysedTrial[] {
    return this.trials.flatMap((trial) => {
      const { analysis } = this.analyses.stateOf(trial.id);
      return analysis ? [{ trial, analysis }] : [];
    });
  }

  private readonly work: TrialWork = {
    align: (first, second) => this.client.align(first, second),
    separate: (first, second) => this.client.separate(first, second),
    tap: (trial) => this.client.tap(trial, trial.lineId === this.lineId ? this.line : undefined),
  };

  private choicesFor(trial: Trial | undefined): AnalysisChoices {
    const own = trial === undefined || trial.lineId === this.lineId;
    const part = trial?.part;
    return {
      wantedSpeed: this.wantedSpeed,
      ...(trial?.speed === undefined ? {} : { speed: trial.speed }),
      ...(own && this.line ? { line: this.line } : {}),
      ...(part ? { part } : {}),
    };
  }

  private choosePart(trial: Trial, stretch: RecordingPart): void {
    const { part, ...rest } = trial;
    const whole = stretch.to - stretch.from >= trial.recording.sampling.duration * 0.999;
    if (whole && !part) return;
    this.dispatchEvent(new TrialChangedEvent<Trial>(whole ? rest : { ...rest, part: stretch }));
  }

  private readAgain(trial: Trial, { choices }: ReadAgainEvent): void {
    const file = this.files.get(trial.id);
    if (file) this.readings.add([file], { trialId: trial.id, choices });
  }

  private readonly onCancelled = (event: Event): void => {
    event.stopPropagation();
    this.readings.cancel();
  };

  private keep({ outcome, analysis, file, choices, trialId, granted }: ReadFile): void {
    if (outcome.kind !== 'read') return;
    const before = this.trials.find((trial) => trial.id === trialId);
    const { recording } = outcome;
    const taken = { lineId: this.lineId, ...(granted ? { granted } : {}) };
    const trial = before ? { ...before, recording } : trialFromRecording(recording, taken);
    this.files.set(trial.id, file);
    if (analysis) this.analyses.adopt(trial, choices, analysis);
    this.openId = trial.id;
    this.dispatchEvent(before ? new TrialChangedEvent<Trial>(trial) : new TrialsAddedEvent<Trial>([trial]));
    void this.updateComplete.then(() => {
      const report = this.renderRoot.querySelector('trial-report');
      if (report) scrollToTop(report);
    });
  }

  private tellLevels(trial: Trial, analysis: TrialAnalysis): void {
    if (trial.speed === undefined) return;
    const { speed, diagnosis } = analysis;
    const levels = diagnosis.orders.map(({ order, amplitude, unit, seen }) => ({
      trialId: trial.id,
      speed,
      order,
      amplitude,
      unit,
      seen,
    }));
    this.dispatchEvent(new LevelsMeasuredEvent(levels));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'trials-leaf': TrialsLeaf;
  }
}
