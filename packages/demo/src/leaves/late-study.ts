import type { ShaftLine } from '@sternline/core';
import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { LineStudy, StudyOptions } from '../model/line-study.js';
import { startStudyWorker } from '../model/start-study-worker.js';
import { StudyClient } from '../model/study-client.js';

const client = new StudyClient(startStudyWorker);

/** The last answer for a line outlives the leaf that asked for it. */
let last: { readonly line: ShaftLine; readonly options: StudyOptions; readonly study: LineStudy } | undefined;

/** A study of a line that comes when it is done; the one of an earlier line stands meanwhile. */
export class LateStudy implements ReactiveController {
  /** Why there is none. */
  failure = '';
  private asked: { readonly line: ShaftLine; readonly options: StudyOptions } | undefined;

  constructor(private readonly host: ReactiveControllerHost) {
    host.addController(this);
  }

  hostDisconnected(): void {
    this.asked = undefined;
  }

  /** Whether the study at hand is of this line. */
  isOf(line: ShaftLine): boolean {
    return last?.line === line;
  }

  /** The study of this line, or the last one until it comes. */
  of(line: ShaftLine, options: StudyOptions): LineStudy | undefined {
    if (last && alike(last, { line, options })) return last.study;
    if (!this.asked || !alike(this.asked, { line, options })) {
      this.asked = { line, options };
      client.ask(line, options, (study) => {
        this.take({ line, options }, study);
      });
    }
    return last?.study;
  }

  private take(task: { line: ShaftLine; options: StudyOptions }, study: LineStudy | Error): void {
    this.failure = study instanceof Error ? study.message : '';
    if (!(study instanceof Error)) last = { ...task, study };
    this.host.requestUpdate();
  }
}

interface Asked {
  readonly line: ShaftLine;
  readonly options: StudyOptions;
}

function alike(one: Asked, other: Asked): boolean {
  return (
    one.line === other.line &&
    one.options.top === other.options.top &&
    one.options.speed === other.options.speed
  );
}
