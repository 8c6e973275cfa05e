/** Two recordings that cannot be set on one clock. */
export class AlignmentError extends Error {
  override readonly name = 'AlignmentError';
  /** `unlike` where nothing in one answers to the other, `ambiguous` where several offsets fit as well. */
  readonly code: 'unlike' | 'ambiguous';

  constructor(code: AlignmentError['code'], found: string) {
    super(
      `alignRecordings: ${found} Tap the hull three times at uneven pauses at the beginning of every recording.`,
    );
    this.code = code;
  }
}
