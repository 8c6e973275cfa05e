import type { Recording } from '@sternline/core';
import { analyse } from './analysis.js';
import type {
  AnalysisChoices,
  NamedBytes,
  ReadChoices,
  ReadOutcome,
  TrialAnalysis,
} from './analysis-types.js';
import type { ReportProgress } from './progress.js';
import { readBytes } from './read-bytes.js';

/** A file that was read, and what its recording says where it could be read. */
export interface Opened {
  readonly outcome: ReadOutcome;
  readonly analysis?: TrialAnalysis;
}

/** The work on recordings, done where the desk stands: in a worker, or on the page where there is none. */
export class AnalysisDesk {
  private held: { readonly key: string; readonly recording: Recording } | undefined;

  /** Answers; shows that the worker runs. */
  ping(): true {
    return true;
  }

  /** Reads a file and analyses it in one go, so that its samples travel once. */
  open(
    file: NamedBytes,
    choices: { readonly read: ReadChoices; readonly analysis: AnalysisChoices },
    report: ReportProgress,
  ): Opened {
    void report({ share: 0.05, doing: `Reading ${file.name}` });
    const outcome = readBytes(file, choices.read);
    if (outcome.kind !== 'read') return { outcome };
    return { outcome, analysis: analyse(outcome.recording, choices.analysis, report) };
  }

  /** Analyses a recording that was sound before it came here: decoded, or kept in a project. */
  analyse(
    sent: { readonly key: string; readonly recording?: Recording },
    choices: AnalysisChoices,
    report: ReportProgress,
  ): TrialAnalysis {
    if (sent.recording) this.held = { key: sent.key, recording: sent.recording };
    if (this.held?.key !== sent.key) throw new Error(`AnalysisDesk: recording ${sent.key} was not sent`);
    return analyse(this.held.recording, choices, report);
  }
}
