import { wrap, type Remote } from 'comlink';
import { adviceDesk, type AdviceDesk } from './advice-desk.js';
import { CancelledError } from './cancelled-error.js';

/** Name of a piece of work. */
export type AdviceWork = keyof AdviceDesk;
export type AdviceInput<Work extends AdviceWork> = Parameters<AdviceDesk[Work]>[0];
export type AdviceAnswer<Work extends AdviceWork> = ReturnType<AdviceDesk[Work]>;

type Task<Work extends AdviceWork> = (
  input: AdviceInput<Work>,
) => AdviceAnswer<Work> | Promise<AdviceAnswer<Work>>;

/** A piece of work that was asked for. */
export interface Asked<Answer> {
  readonly answer: Promise<Answer>;
  /** Stops it, whether it waits or runs; its answer is then refused with a CancelledError. */
  readonly cancel: () => void;
}

interface Job {
  readonly run: () => Promise<void>;
  readonly refuse: (reason: Error) => void;
}

/**
 * The page's way to the work of giving advice: one worker, one piece at a time, in order. One that runs is cancelled by
 * ending the worker; the next starts another. Where the browser gives no worker, the page does the work.
 */
export class AdviceClient {
  private worker: Worker | undefined;
  private desk: Remote<AdviceDesk> | undefined;
  private waiting: Job[] = [];
  private running: Job | undefined;

  /** @param createWorker - makes the worker; absent, or where it throws, work is done on the page */
  constructor(private readonly createWorker?: () => Worker) {}

  /** Asks for a piece of work. */
  ask<Work extends AdviceWork>(work: Work, input: AdviceInput<Work>): Asked<AdviceAnswer<Work>> {
    const { promise, resolve, reject } = withResolvers<AdviceAnswer<Work>>();
    const job: Job = {
      run: async () => {
        try {
          resolve(await this.work(work, input));
        } catch (error) {
          reject(error instanceof Error ? error : new Error(String(error)));
        }
      },
      refuse: reject,
    };
    this.waiting.push(job);
    if (!this.running) void this.goOn();
    return {
      answer: promise,
      cancel: () => {
        this.cancel(job);
      },
    };
  }

  private async goOn(): Promise<void> {
    for (let job = this.waiting.shift(); job; job = this.waiting.shift()) {
      this.running = job;
      await job.run();
      // Cancelled meanwhile: another round has taken over.
      if (this.running !== job) return;
    }
    this.running = undefined;
  }

  private cancel(job: Job): void {
    const waits = this.waiting.includes(job);
    if (!waits && this.running !== job) return;
    job.refuse(new CancelledError());
    this.waiting = this.waiting.filter((other) => other !== job);
    if (waits) return;
    this.worker?.terminate();
    this.worker = undefined;
    this.desk = undefined;
    this.running = undefined;
    void this.goOn();
  }

  private async work<Work extends AdviceWork>(
    work: Work,
    input: AdviceInput<Work>,
  ): Promise<AdviceAnswer<Work>> {
    const desk = this.start() ?? adviceDesk;
    // Near or far, each piece of work takes its own input; the compiler cannot follow that through the name.
    const task = desk[work] as unknown as Task<Work>;
    return await task(input);
  }

  private start(): Remote<AdviceDesk> | undefined {
    if (this.desk || !this.createWorker) return this.desk;
    try {
      this.worker = this.createWorker();
      this.desk = wrap<AdviceDesk>(this.worker);
    } catch {
      // No worker in this browser: the page itself does the work from here on.
    }
    return this.desk;
  }
}

function withResolvers<Value>() {
  let resolve!: (value: Value) => void;
  let reject!: (reason: Error) => void;
  const promise = new Promise<Value>((accept, refuse) => {
    resolve = accept;
    reject = refuse;
  });
  return { promise, resolve, reject };
}
