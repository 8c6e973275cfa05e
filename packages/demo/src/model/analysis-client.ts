import { proxy, transfer, wrap, type Remote } from 'comlink';
import type { Recording, SeparatedLine, ShaftLine } from '@sternline/core';
import type {
  AnalysisChoices,
  CourseChoices,
  NamedBytes,
  ReadChoices,
  TrialAnalysis,
  TrialCourse,
} from './analysis-types.js';
import { AnalysisDesk } from './analysis-desk.js';
import type { AlignmentOutcome, Opened, OpenChoices, SentRecording } from './analysis-desk.js';
import { CancelledError } from './cancelled-error.js';
import type { DecodedSound } from './decoded-sound.js';
import type { ReportProgress } from './progress.js';
import type { Trial } from './project.js';
import type { TapOutcome } from './tap-words.js';

/** What the page needs of a desk, near or far. */
type Desk = AnalysisDesk | Remote<AnalysisDesk>;

/** Recordings that the desk holds at most: the one on show, and one beside it. */
const HELD = 2;

/** How a file is read and analysed. */
export type FileChoices = Pick<OpenChoices, 'analysis'> & { readonly read: ReadChoices };

/** A trial whose speed is known, in rad/s. */
export type RunOfTrial = Pick<Trial, 'recording' | 'part'> & { readonly speed: number };

/**
 * The page's way to the work on recordings: one worker, one piece of work at a time, in order. Where the browser gives
 * no worker the same work is done on the page.
 */
export class AnalysisClient {
  private worker: Worker | undefined;
  private desk: Promise<Desk> | undefined;
  private queue: Promise<unknown> = Promise.resolve();
  private stop = new AbortController();
  private readonly keys = new WeakMap<Recording, string>();
  private made = 0;
  /** Keys of what the desk holds, used last last. */
  private held: readonly string[] = [];

  /** @param createWorker - makes the worker; absent, or where it throws, work is done on the page */
  constructor(private readonly createWorker?: () => Worker) {}

  /** Reads and analyses a file; its bytes are handed over and are gone from the page. */
  open(file: NamedBytes, choices: FileChoices, report: ReportProgress): Promise<Opened> {
    return this.inTurn(async (desk) => {
      const bytes = this.worker ? transfer(file.bytes, [file.bytes.buffer as ArrayBuffer]) : file.bytes;
      const slot = this.slot(this.newKey());
      const opened = await desk.open(
        { name: file.name, bytes },
        { ...slot, ...choices },
        this.outward(report),
      );
      return this.keep(slot.key, opened);
    });
  }

  /** Analyses sound that the browser decoded; its samples are handed over and are gone from the page. */
  openSound(sound: DecodedSound, analysis: AnalysisChoices, report: ReportProgress): Promise<Opened> {
    return this.inTurn(async (desk) => {
      const buffers = sound.channels.map(({ buffer }) => buffer as ArrayBuffer);
      const slot = this.slot(this.newKey());
      const handed = this.worker ? transfer(sound, buffers) : sound;
      const opened = await desk.openSound(handed, { ...slot, read: {}, analysis }, this.outward(report));
      return this.keep(slot.key, opened);
    });
  }

  /** Analyses a recording; one that the desk holds is not sent again. */
  analyse(recording: Recording, choices: AnalysisChoices, report: ReportProgress): Promise<TrialAnalysis> {
    return this.inTurn(
      async (desk) => await desk.analyse(this.sent(recording), choices, this.outward(report)),
    );
  }

  /** What happens through a recording at a speed. */
  course(recording: Recording, choices: CourseChoices, report: ReportProgress): Promise<TrialCourse> {
    return this.inTurn(
      async (desk) => await desk.course(this.sent(recording), choices, this.outward(report)),
    );
  }

  /** Sets two recordings of one trial on one clock. */
  align(first: Recording, second: Recording): Promise<AlignmentOutcome> {
    return this.inTurn(async (desk) => await desk.align(this.sent(first), this.sent(second)));
  }

  /** Reads the ringing of a trial that was tapped, and what is predicted for its line. */
  tap(
    { recording, part }: Pick<Trial, 'recording' | 'part'>,
    line: ShaftLine | undefined,
  ): Promise<TapOutcome> {
    const of = { ...(part ? { part } : {}), ...(line ? { line } : {}) };
    return this.inTurn(async (desk) => await desk.tap(this.sent(recording), of));
  }

  /** What a second run, at another speed, tells of the lines of the first. */
  separate(first: RunOfTrial, second: RunOfTrial): Promise<SeparatedLine[]> {
    const sent = ({ recording, part, speed }: RunOfTrial) => {
      return { ...this.sent(recording), ...(part ? { part } : {}), speed };
    };
    return this.inTurn(async (desk) => await desk.separate(sent(first), sent(second)));
  }

  /** Stops what is being done and what waits; the next call starts afresh. */
  cancel(): void {
    this.stop.abort(new CancelledError());
    this.stop = new AbortController();
    this.worker?.terminate();
    this.worker = undefined;
    this.desk = undefined;
    this.held = [];
    this.queue = Promise.resolve();
  }

  private sent(recording: Recording): SentRecording {
    const key = this.keys.get(recording) ?? this.newKey();
    this.keys.set(recording, key);
    const known = this.held.includes(key);
    return { ...this.slot(key), ...(known ? {} : { recording }) };
  }

  /** Room on the desk: what was used longest ago makes it. */
  private slot(key: string): Pick<SentRecording, 'key' | 'forget'> {
    const others = this.held.filter((one) => one !== key);
    const forget = others.length >= HELD ? others[0] : undefined;
    this.held = [...others.filter((one) => one !== forget), key];
    return { key, ...(forget === undefined ? {} : { forget }) };
  }

  private keep(key: string, opened: Opened): Opened {
    if (opened.outcome.kind === 'read') this.keys.set(opened.outcome.recording, key);
    else this.held = this.held.filter((one) => one !== key);
    return opened;
  }

  private newKey(): string {
    this.made += 1;
    return String(this.made);
  }

  private inTurn<Result>(work: (desk: Desk) => Promise<Result>): Promise<Result> {
    const { signal } = this.stop;
    const turn = this.queue.then(async () => {
      signal.throwIfAborted();
      this.desk ??= this.startDesk();
      return await work(await this.desk);
    });
    this.queue = turn.catch(() => undefined);
    return Promise.race([turn, rejection(signal)]);
  }

  private async startDesk(): Promise<Desk> {
    try {
      const worker = this.createWorker?.();
      if (!worker) return new AnalysisDesk();
      const desk = wrap<AnalysisDesk>(worker);
      this.worker = worker;
      await Promise.race([desk.ping(), failure(worker)]);
      return desk;
    } catch {
      this.worker = undefined;
      return new AnalysisDesk();
    }
  }

  private outward(report: ReportProgress): ReportProgress {
    return this.worker ? proxy(report) : report;
  }
}

function rejection(signal: AbortSignal): Promise<never> {
  return new Promise((_, reject) => {
    signal.addEventListener('abort', () => {
      reject(signal.reason as Error);
    });
  });
}

function failure(worker: Worker): Promise<never> {
  return new Promise((_, reject) => {
    worker.addEventListener('error', () => {
      reject(new Error('the worker did not start'));
    });
  });
}
