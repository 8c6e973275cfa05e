import { alignRecordings, AlignmentError, separateFolded, sliceRecording } from '@sternline/core';
import type { Alignment, Recording, SeparatedLine, ShaftLine } from '@sternline/core';
import { analyse } from './analysis.js';
import type {
  AnalysisChoices,
  CourseChoices,
  NamedBytes,
  ReadChoices,
  ReadOutcome,
  TrialAnalysis,
  TrialCourse,
} from './analysis-types.js';
import { soundRecording } from './decoded-sound.js';
import type { DecodedSound } from './decoded-sound.js';
import type { ReportProgress } from './progress.js';
import { readBytes } from './read-bytes.js';
import { readTaps } from './read-taps.js';
import type { RecordingPart } from './recording-part.js';
import type { TapOutcome } from './tap-words.js';
import { trialCourse } from './trial-course.js';

/** A file that was read, and what its recording says where it could be read. */
export interface Opened {
  readonly outcome: ReadOutcome;
  readonly analysis?: TrialAnalysis;
}

/** A recording by its key, with its samples where the desk does not hold them yet. */
export interface SentRecording {
  readonly key: string;
  readonly recording?: Recording;
  /** Key of a recording that the desk need not hold any longer. */
  readonly forget?: string;
}

/** A recording with its speed, in rad/s, and the stretch that is read. */
export interface SentRun extends SentRecording {
  readonly speed: number;
  readonly part?: RecordingPart;
}

/** How a file is read and analysed, and the key that its recording is held under. */
export interface OpenChoices {
  readonly key: string;
  readonly forget?: string;
  readonly read: ReadChoices;
  readonly analysis: AnalysisChoices;
}

/** How two recordings lie to one another, or why that cannot be told. */
export type AlignmentOutcome =
  | { readonly kind: 'aligned'; readonly alignment: Alignment }
  | { readonly kind: 'apart'; readonly code: AlignmentError['code'] };

/** The work on recordings, done where the desk stands: in a worker, or on the page where there is none. */
export class AnalysisDesk {
  private readonly held = new Map<string, Recording>();

  /** Answers; shows that the worker runs. */
  ping(): true {
    return true;
  }

  /** Reads a file and analyses it in one go, so that its samples travel once. */
  open(file: NamedBytes, choices: OpenChoices, report: ReportProgress): Opened {
    void report({ share: 0.05, doing: `Reading ${file.name}` });
    return this.analyseOpened(readBytes(file, choices.read), choices, report);
  }

  /** Takes sound that the browser decoded, and analyses it. */
  openSound(sound: DecodedSound, choices: OpenChoices, report: ReportProgress): Opened {
    return this.analyseOpened({ kind: 'read', recording: soundRecording(sound) }, choices, report);
  }

  /** Analyses a recording that was sound before it came here: decoded, or kept in a project. */
  analyse(sent: SentRecording, choices: AnalysisChoices, report: ReportProgress): TrialAnalysis {
    return analyse(this.take(sent), choices, report);
  }

  /** What happens through a recording. */
  course(sent: SentRecording, choices: CourseChoices, report: ReportProgress): TrialCourse {
    return trialCourse(this.take(sent), choices, report);
  }

  /** Sets two recordings of one trial on one clock. */
  align(first: SentRecording, second: SentRecording): AlignmentOutcome {
    try {
      return { kind: 'aligned', alignment: alignRecordings([this.take(first), this.take(second)]) };
    } catch (error) {
      if (error instanceof AlignmentError) return { kind: 'apart', code: error.code };
      throw error;
    }
  }

  /** Reads the ringing of a part that was tapped. */
  tap(sent: SentRecording, of: { readonly part?: RecordingPart; readonly line?: ShaftLine }): TapOutcome {
    const recording = this.take(sent);
    return readTaps(of.part ? sliceRecording(recording, of.part) : recording, of.line);
  }

  /** What a second recording, at another speed, tells of the lines of the first. */
  separate(first: SentRun, second: SentRun): SeparatedLine[] {
    const recordings = [first, second].map(({ speed, part, ...sent }) => {
      const recording = this.take(sent);
      return { recording: part ? sliceRecording(recording, part) : recording, speed };
    });
    return separateFolded({ recordings });
  }

  private analyseOpened(outcome: ReadOutcome, choices: OpenChoices, report: ReportProgress): Opened {
    if (outcome.kind !== 'read') return { outcome };
    const { recording } = outcome;
    this.take({ ...choices, recording });
    return { outcome, analysis: analyse(recording, choices.analysis, report) };
  }

  private take({ key, recording, forget }: SentRecording): Recording {
    if (forget !== undefined) this.held.delete(forget);
    if (recording) this.held.set(key, recording);
    const held = this.held.get(key);
    if (!held) throw new Error(`AnalysisDesk: recording ${key} was not sent`);
    return held;
  }
}
