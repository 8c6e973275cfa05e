/** A microphone or motion sensor that was granted, before and while it records. */
export interface Capture {
  /** What was granted, in sentences. */
  readonly granted: readonly string[];
  /** Strength since the last call: 0 … 1 of full scale for sound, m/s² from the mean for motion. */
  level(): number;
  /** From now on samples are kept. */
  begin(): void;
  /** Ends the recording, lets the device go, and gives a file that the page reads like any other. */
  end(): Promise<File>;
  /** Lets the device go; nothing is kept. */
  release(): void;
}

/** A device that was not granted, or that there is not; the message says what to do instead. */
export class CaptureError extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'CaptureError';
  }
}
