/** How far a piece of work has come. */
export interface Progress {
  /** 0 … 1 */
  readonly share: number;
  /** What is being done now, in words. */
  readonly doing: string;
}

export type ReportProgress = (progress: Progress) => unknown;
