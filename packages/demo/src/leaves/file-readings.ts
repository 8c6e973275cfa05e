import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { AnalysisClient } from '../model/analysis-client.js';
import type { Opened } from '../model/analysis-desk.js';
import type { AnalysisChoices, ReadChoices } from '../model/analysis-types.js';
import { CancelledError } from '../model/cancelled-error.js';
import { readFile } from '../model/read-files.js';
import type { PendingFile } from './pending-file.js';

/** A file that became a recording. */
export interface ReadFile extends Opened {
  readonly file: File;
  readonly choices: AnalysisChoices;
  /** The trial that was read again, where it was one. */
  readonly trialId: string | undefined;
  /** What the device granted, where the page itself recorded it. */
  readonly granted: readonly string[] | undefined;
}

/** What is known of a file beside its content. */
export type FileTold = Partial<Pick<PendingFile, 'trialId' | 'choices' | 'granted'>>;

/** What the readings need of the leaf. */
export interface ReadingHost {
  /** How a recording that is new is analysed. */
  readonly choices: (trialId: string | undefined) => AnalysisChoices;
  readonly done: (read: ReadFile) => void;
}

/** The files on their way to become trials: one after another, none lost where one stops. */
export class FileReadings implements ReactiveController {
  pending: readonly PendingFile[] = [];
  private made = 0;
  private stop = new AbortController();

  constructor(
    private readonly host: ReactiveControllerHost,
    private readonly client: AnalysisClient,
    private readonly leaf: ReadingHost,
  ) {
    host.addController(this);
  }

  hostConnected(): void {
    // Nothing to set up; Lit asks for one method of a controller.
  }

  /** Takes files in, to be read in turn. */
  add(files: readonly File[], told: FileTold = {}): void {
    const added = files.map((file): PendingFile => {
      this.made += 1;
      return { choices: {}, ...told, key: String(this.made), file };
    });
    this.pending = [...this.pending, ...added];
    for (const one of added) void this.read(one);
  }

  /** Reads a file with what the user told, or puts it aside where they told nothing. */
  answer(key: string, choices: ReadChoices | undefined): void {
    const one = this.pending.find((pending) => pending.key === key);
    if (!one) return;
    if (choices) void this.read({ ...one, choices });
    else this.drop(key);
  }

  /** Stops what is being read, wherever it stands. */
  cancel(): void {
    this.stop.abort(new CancelledError());
    this.stop = new AbortController();
    this.client.cancel();
  }

  private async read(one: PendingFile): Promise<void> {
    const { key, file, choices, trialId, granted } = one;
    const base: PendingFile = {
      ...{ key, file, choices },
      ...(trialId === undefined ? {} : { trialId }),
      ...(granted === undefined ? {} : { granted }),
    };
    this.show({ ...base, progress: { share: 0, doing: `Opening ${file.name}` } });
    try {
      const analysis = this.leaf.choices(trialId);
      const report = (progress: NonNullable<PendingFile['progress']>) => {
        if (this.pending.some((pending) => pending.key === key && pending.progress))
          this.show({ ...base, progress });
      };
      const { client, stop } = this;
      const opened = await readFile(file, { client, read: choices, analysis, report, signal: stop.signal });
      if (opened.outcome.kind === 'stopped') {
        this.show({ ...base, stopped: opened.outcome });
        return;
      }
      this.drop(key);
      this.leaf.done({ ...opened, file, choices: analysis, trialId, granted });
    } catch (error) {
      this.show(
        error instanceof CancelledError ? { ...base, cancelled: true } : { ...base, stopped: fault(error) },
      );
    }
  }

  private show(one: PendingFile): void {
    this.pending = this.pending.map((pending) => (pending.key === one.key ? one : pending));
    this.host.requestUpdate();
  }

  private drop(key: string): void {
    this.pending = this.pending.filter((pending) => pending.key !== key);
    this.host.requestUpdate();
  }
}

function fault(error: unknown): NonNullable<PendingFile['stopped']> {
  const found = error instanceof Error ? error.message : String(error);
  return {
    code: 'other',
    found,
    remedy: 'Choose the file again; where that fails, save it in another format.',
  };
}
