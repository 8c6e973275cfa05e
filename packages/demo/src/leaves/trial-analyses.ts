import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { AnalysisClient } from '../model/analysis-client.js';
import type { AnalysisChoices, TrialAnalysis } from '../model/analysis-types.js';
import { CancelledError } from '../model/cancelled-error.js';
import type { Progress } from '../model/progress.js';
import type { Trial } from '../model/project.js';

/** How far the analysis of a trial is; the last good one stays while another is made. */
export interface AnalysisState {
  readonly kind: 'waiting' | 'working' | 'done' | 'cancelled' | 'failed';
  readonly progress?: Progress;
  readonly problem?: string;
  readonly analysis?: TrialAnalysis;
}

interface Entry {
  readonly trial: Trial;
  readonly choices: AnalysisChoices;
  readonly state: AnalysisState;
}

/** ms that the user may go on typing before work starts. */
const PAUSE = 250;

/** The analyses of the trials on show, made once for each set of choices. */
export class TrialAnalyses implements ReactiveController {
  private readonly entries = new Map<string, Entry>();
  private readonly timers = new Map<string, ReturnType<typeof setTimeout>>();

  constructor(
    private readonly host: ReactiveControllerHost,
    private readonly client: AnalysisClient,
    private readonly onDone: (trial: Trial, analysis: TrialAnalysis) => void,
  ) {
    host.addController(this);
  }

  hostDisconnected(): void {
    for (const timer of this.timers.values()) clearTimeout(timer);
  }

  stateOf(trialId: string): AnalysisState {
    return this.entries.get(trialId)?.state ?? { kind: 'waiting' };
  }

  /** Takes over an analysis that came with the reading of the file. */
  adopt(trial: Trial, choices: AnalysisChoices, analysis: TrialAnalysis): void {
    this.settle({ trial, choices, state: { kind: 'done', analysis } });
  }

  /** Asks for the analysis of a trial; the same one is not made twice. */
  request(trial: Trial, choices: AnalysisChoices): void {
    const entry = this.entries.get(trial.id);
    if (entry && sameWork(entry, { trial, choices })) return;
    const kept = entry?.state.analysis && entry.trial.recording === trial.recording ? entry.state : {};
    this.entries.set(trial.id, { trial, choices, state: { ...kept, kind: 'waiting' } });
    clearTimeout(this.timers.get(trial.id));
    this.timers.set(
      trial.id,
      setTimeout(() => void this.run(trial, choices), entry ? PAUSE : 0),
    );
  }

  /** Does the last piece of work again, after it was cancelled. */
  repeat(trialId: string): void {
    const entry = this.entries.get(trialId);
    if (entry) void this.run(entry.trial, entry.choices);
  }

  private async run(trial: Trial, choices: AnalysisChoices): Promise<void> {
    const current = () => this.entries.get(trial.id)?.choices === choices;
    const show = (state: AnalysisState) => {
      if (current()) this.settle({ trial, choices, state: { ...this.lastAnalysis(trial.id), ...state } });
    };
    show({ kind: 'working', progress: { share: 0, doing: 'Waiting for its turn' } });
    try {
      const analysis = await this.client.analyse(trial.recording, choices, (progress) => {
        if (this.stateOf(trial.id).kind === 'working') show({ kind: 'working', progress });
      });
      show({ kind: 'done', analysis });
      if (current()) this.onDone(trial, analysis);
    } catch (error) {
      const problem = error instanceof Error ? error.message : String(error);
      show(error instanceof CancelledError ? { kind: 'cancelled' } : { kind: 'failed', problem });
    }
  }

  private lastAnalysis(trialId: string): Pick<AnalysisState, 'analysis'> {
    const { analysis } = this.stateOf(trialId);
    return analysis ? { analysis } : {};
  }

  private settle(entry: Entry): void {
    this.entries.set(entry.trial.id, entry);
    this.host.requestUpdate();
  }
}

function sameWork(a: Pick<Entry, 'trial' | 'choices'>, b: Pick<Entry, 'trial' | 'choices'>): boolean {
  const wanted = (choices: AnalysisChoices) => choices.speed ?? choices.wantedSpeed;
  return (
    a.trial.recording === b.trial.recording &&
    a.choices.speed === b.choices.speed &&
    wanted(a.choices) === wanted(b.choices) &&
    a.choices.line === b.choices.line &&
    a.choices.part?.from === b.choices.part?.from &&
    a.choices.part?.to === b.choices.part?.to
  );
}
