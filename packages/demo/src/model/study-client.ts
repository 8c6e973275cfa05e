import type { ShaftLine } from '@sternline/core';
import { wrap, type Remote } from 'comlink';
import { studyLine, type LineStudy, type StudyOptions } from './line-study.js';

interface StudyDesk {
  study: (line: ShaftLine, options: StudyOptions) => LineStudy;
}

interface Task {
  readonly line: ShaftLine;
  readonly options: StudyOptions;
  readonly done: (study: LineStudy | Error) => void;
}

/**
 * The page's way to a study of a line: one worker, one study at a time. Of those asked for meanwhile only the last is
 * done, since a newer line makes the others idle. Where the browser gives no worker, the page does it.
 */
export class StudyClient {
  private desk: Remote<StudyDesk> | undefined;
  private busy = false;
  private next: Task | undefined;

  /** @param createWorker - makes the worker; absent, or where it throws, work is done on the page */
  constructor(private readonly createWorker?: () => Worker) {}

  /** Calls back with the study, unless a later one is asked for before its turn comes. */
  ask(line: ShaftLine, options: StudyOptions, done: Task['done']): void {
    this.next = { line, options, done };
    if (!this.busy) void this.work();
  }

  private async work(): Promise<void> {
    this.busy = true;
    for (let task = this.take(); task; task = this.take()) task.done(await this.study(task));
    this.busy = false;
  }

  private take(): Task | undefined {
    const task = this.next;
    this.next = undefined;
    return task;
  }

  private async study({ line, options }: Task): Promise<LineStudy | Error> {
    try {
      const desk = this.start();
      return desk ? await desk.study(line, options) : studyLine(line, options);
    } catch (error) {
      return error instanceof Error ? error : new Error(String(error));
    }
  }

  private start(): Remote<StudyDesk> | undefined {
    if (this.desk || !this.createWorker) return this.desk;
    try {
      this.desk = wrap<StudyDesk>(this.createWorker());
    } catch {
      // No worker in this browser: the page itself does the work from here on.
    }
    return this.desk;
  }
}
