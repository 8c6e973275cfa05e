import { expose, transfer } from 'comlink';
import type {
  AnalysisChoices,
  CourseChoices,
  NamedBytes,
  TrialAnalysis,
  TrialCourse,
} from './analysis-types.js';
import { AnalysisDesk } from './analysis-desk.js';
import type { Opened, OpenChoices, SentRecording } from './analysis-desk.js';
import type { DecodedSound } from './decoded-sound.js';
import type { ReportProgress } from './progress.js';
import { sampleBuffers } from './sample-buffers.js';

/** The desk with its results handed over rather than copied on the page's thread. */
class WorkerDesk extends AnalysisDesk {
  override open(file: NamedBytes, choices: OpenChoices, report: ReportProgress): Opened {
    return handedCopy(super.open(file, choices, report));
  }

  override openSound(sound: DecodedSound, choices: OpenChoices, report: ReportProgress): Opened {
    return handedCopy(super.openSound(sound, choices, report));
  }

  override analyse(sent: SentRecording, choices: AnalysisChoices, report: ReportProgress): TrialAnalysis {
    return handed(super.analyse(sent, choices, report));
  }

  override course(sent: SentRecording, choices: CourseChoices, report: ReportProgress): TrialCourse {
    return handed(super.course(sent, choices, report));
  }
}

function handed<Result extends object>(result: Result): Result {
  return transfer(result, sampleBuffers(result));
}

/** The desk keeps the samples for the work that follows, so the page is given its own. */
function handedCopy(opened: Opened): Opened {
  return handed(structuredClone(opened));
}

expose(new WorkerDesk());
