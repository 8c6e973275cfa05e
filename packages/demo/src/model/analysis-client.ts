import { proxy, transfer, wrap, type Remote } from 'comlink';
import type { Recording } from '@sternline/core';
import type { AnalysisChoices, NamedBytes, ReadChoices, TrialAnalysis } from './analysis-types.js';
import { AnalysisDesk } from './analysis-desk.js';
import type { Opened } from './analysis-desk.js';
import { CancelledError } from './cancelled-error.js';
import type { ReportProgress } from './progress.js';

/** What the page needs of a desk, near or far. */
type Desk = AnalysisDesk | Remote<AnalysisDesk>;

/**
 * The page's way to the work on recordings: one worker, one piece of work at a time, in order. Where the browser gives
 * no worker the same work is done on the page.
 */
export class AnalysisClient {
  private worker: Worker | undefined;
  private desk: Promise<Desk> | undefined;
  private heldKey: string | undefined;
  private queue: Promise<unknown> = Promise.resolve();
  private stop = new AbortController();

  /** @param createWorker - makes the worker; absent, or where it throws, work is done on the page */
  constructor(private readonly createWorker?: () => Worker) {}

  /** Reads and analyses a file; its bytes are handed over and are gone from the page. */
  open(
    file: NamedBytes,
    choices: { readonly read: ReadChoices; readonly analysis: AnalysisChoices },
    report: ReportProgress,
  ): Promise<Opened> {
    return this.inTurn(async (desk) => {
      const bytes = this.worker ? transfer(file.bytes, [file.bytes.buffer as ArrayBuffer]) : file.bytes;
      return await desk.open({ name: file.name, bytes }, choices, this.outward(report));
    });
  }

  /** Analyses a recording; one that was just analysed is not sent again. */
  analyse(
    sent: { readonly key: string; readonly recording: Recording },
    choices: AnalysisChoices,
    report: ReportProgress,
  ): Promise<TrialAnalysis> {
    return this.inTurn(async (desk) => {
      const message = this.heldKey === sent.key ? { key: sent.key } : sent;
      this.heldKey = sent.key;
      return await desk.analyse(message, choices, this.outward(report));
    });
  }

  /** Stops what is being done and what waits; the next call starts afresh. */
  cancel(): void {
    this.stop.abort(new CancelledError());
    this.stop = new AbortController();
    this.worker?.terminate();
    this.worker = undefined;
    this.desk = undefined;
    this.heldKey = undefined;
    this.queue = Promise.resolve();
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
