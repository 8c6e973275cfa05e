import { expose, transfer } from 'comlink';
import type { Recording } from '@sternline/core';
import type { AnalysisChoices, NamedBytes, ReadChoices, TrialAnalysis } from './analysis-types.js';
import { AnalysisDesk } from './analysis-desk.js';
import type { Opened } from './analysis-desk.js';
import type { ReportProgress } from './progress.js';
import { sampleBuffers } from './sample-buffers.js';

/** The desk with its results handed over rather than copied. */
class WorkerDesk extends AnalysisDesk {
  override open(
    file: NamedBytes,
    choices: { readonly read: ReadChoices; readonly analysis: AnalysisChoices },
    report: ReportProgress,
  ): Opened {
    const opened = super.open(file, choices, report);
    return transfer(opened, sampleBuffers(opened));
  }

  override analyse(
    sent: { readonly key: string; readonly recording?: Recording },
    choices: AnalysisChoices,
    report: ReportProgress,
  ): TrialAnalysis {
    const analysis = super.analyse(sent, choices, report);
    return transfer(analysis, sampleBuffers(analysis));
  }
}

expose(new WorkerDesk());
