import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { AnalysisClient } from '../model/analysis-client.js';
import type { AnalysisChoices, CourseChoices, TrialAnalysis, TrialCourse } from '../model/analysis-types.js';
import { CancelledError } from '../model/cancelled-error.js';
import type { Trial } from '../model/project.js';

/** How far the course of a trial is; the last good one of the same recording stays while another is made. */
export interface CourseState {
  readonly kind: 'none' | 'working' | 'done' | 'cancelled' | 'failed';
  readonly course?: TrialCourse;
  readonly problem?: string;
}

interface Entry extends CourseState {
  readonly recording: Trial['recording'];
  readonly choices: CourseChoices;
}

const NONE: CourseState = { kind: 'none' };

/** What happens through the recording on show, worked out after its answer stands there. */
export class TrialCourses implements ReactiveController {
  private readonly entries = new Map<string, Entry>();

  constructor(
    private readonly host: ReactiveControllerHost,
    private readonly client: AnalysisClient,
  ) {
    host.addController(this);
  }

  hostConnected(): void {
    // Nothing to set up; Lit asks for one method of a controller.
  }

  stateOf(trialId: string): CourseState {
    return this.entries.get(trialId) ?? NONE;
  }

  /** Asks for the course of a trial that was analysed; the same one is not made twice. */
  request(trial: Trial, choices: AnalysisChoices, { speed }: TrialAnalysis): void {
    const { recording } = trial;
    const asked = { ...choices, readAt: speed };
    const before = this.entries.get(trial.id);
    if (before?.recording === recording && sameWork(before.choices, asked)) return;
    const kept = before?.course && before.recording === recording ? { course: before.course } : {};
    const entry: Entry = { ...kept, kind: 'working', recording, choices: asked };
    this.entries.set(trial.id, entry);
    void this.run(trial.id, entry);
  }

  /** Does the last piece of work again, after it was cancelled. */
  repeat(trialId: string): void {
    this.entries.delete(trialId);
    this.host.requestUpdate();
  }

  private async run(id: string, entry: Entry): Promise<void> {
    const settle = (state: CourseState) => {
      if (this.entries.get(id) !== entry) return;
      this.entries.set(id, { ...entry, ...state });
      this.host.requestUpdate();
    };
    try {
      const course = await this.client.course(entry.recording, entry.choices, () => undefined);
      settle({ kind: 'done', course });
    } catch (error) {
      const problem = error instanceof Error ? error.message : String(error);
      settle(error instanceof CancelledError ? { kind: 'cancelled' } : { kind: 'failed', problem });
    }
  }
}

function sameWork(a: CourseChoices, b: CourseChoices): boolean {
  return (
    a.line === b.line &&
    a.speed === b.speed &&
    Math.abs(a.readAt / b.readAt - 1) < 1e-3 &&
    a.part?.from === b.part?.from &&
    a.part?.to === b.part?.to
  );
}
