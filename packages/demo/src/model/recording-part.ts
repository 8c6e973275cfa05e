/** A stretch of a recording. */
export interface RecordingPart {
  /** s from the start. */
  readonly from: number;
  /** s from the start. */
  readonly to: number;
}
