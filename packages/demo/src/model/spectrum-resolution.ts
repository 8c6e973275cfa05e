/** How a spectrum for drawing is cut. */
export interface SpectrumResolution {
  /** Samples a segment. */
  readonly segmentLength: number;
  /** Hz between lines. */
  readonly step: number;
  /** Share of a segment that the next one repeats. */
  readonly overlap: 0 | 0.5;
  /** How many segments are averaged. */
  readonly segments: number;
}

/** Lines between one order and the next, wanted; segments to average, wanted. */
const LINES_AN_ORDER = 24;
const SEGMENTS = 8;
/** Segments end to end from which overlapping ones would only cost time. */
const PLENTY = 60;
/** s; longer segments smear a shaft speed that wanders, as a battery model's does. */
const LONGEST = 4;

/**
 * Chooses the segment length of the spectrum that is drawn: fine enough to part the orders of shaft speed, then as
 * many segments to average as the recording gives.
 *
 * @param recording - `sampleRate` in Hz, `samples` how many there are
 * @param shaftFrequency - Hz, turns a second
 * @returns the segment length, a power of two, with what follows from it
 */
export function spectrumResolution(
  recording: { readonly sampleRate: number; readonly samples: number },
  shaftFrequency: number,
): SpectrumResolution {
  const { sampleRate, samples } = recording;
  const duration = samples / sampleRate;
  const parted = LINES_AN_ORDER / Math.max(shaftFrequency, 1e-3);
  const averaged = (2 * duration) / (SEGMENTS + 1);
  const seconds = Math.min(duration, Math.max(parted, Math.min(averaged, LONGEST)));
  const segmentLength = Math.max(
    2,
    Math.min(powerOfTwo(samples), powerOfTwo(seconds * sampleRate * Math.SQRT2)),
  );
  const overlap = samples / segmentLength > PLENTY ? 0 : 0.5;
  const segments = Math.max(1, Math.floor((samples - segmentLength) / (segmentLength * (1 - overlap))) + 1);
  return { segmentLength, step: sampleRate / segmentLength, overlap, segments };
}

/** The greatest power of two that is not above `samples`: its transform is the fastest. */
function powerOfTwo(samples: number): number {
  return 2 ** Math.floor(Math.log2(Math.max(2, samples)));
}
