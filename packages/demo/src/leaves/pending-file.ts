import type { ReadChoices } from '../model/analysis-types.js';
import type { Progress } from '../model/progress.js';

/** A file on its way to become a trial. */
export interface PendingFile {
  readonly key: string;
  readonly file: File;
  readonly choices: ReadChoices;
  /** The work on it, while it goes on. */
  readonly progress?: Progress;
  /** What stands in the way. */
  readonly stopped?: { readonly code: string; readonly found: string; readonly remedy: string };
  /** Whether the user stopped the reading. */
  readonly cancelled?: boolean;
  /** The trial that is read again, where it is one. */
  readonly trialId?: string;
  /** What the device granted, where the page itself recorded it. */
  readonly granted?: readonly string[];
}
