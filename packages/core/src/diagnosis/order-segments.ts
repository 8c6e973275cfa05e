import type { Gap, Recording } from '../recording/types.js';
import { windowSamples } from '../spectrum/window-samples.js';

export interface SegmentPlan {
  readonly starts: readonly number[];
  /** Samples in a segment. */
  readonly length: number;
  readonly window: Float64Array;
}

/** Half-overlapping segments of about `seconds`, without those that hold a missing sample. */
export function planSegments({ channels, sampleRate, sampling }: Recording, seconds: number): SegmentPlan {
  const total = channels[0]?.samples.length ?? 0;
  const length = Math.max(2, Math.round(seconds * sampleRate));
  const step = Math.max(1, Math.floor(length / 2));
  const starts: number[] = [];
  for (let start = 0; start + length <= total; start += step) {
    if (!meetsGap(sampling.gaps, start, start + length)) starts.push(start);
  }
  return { starts, length, window: windowSamples('hann', length) };
}

function meetsGap(gaps: readonly Gap[], start: number, end: number): boolean {
  return gaps.some((gap) => gap.start < end && gap.start + gap.count > start);
}

/**
 * Mean square of a sine at a frequency, segment by segment, noise included.
 *
 * P = 2 |Σ wₙ (xₙ − x̄) e^{−iωn}|² / (Σ wₙ)²
 *
 * @param place - `frequency` as sampled, in turns a sample
 */
export function segmentPowers(
  samples: Float64Array,
  { starts, length, window, frequency }: SegmentPlan & { readonly frequency: number },
): Float64Array {
  const sum = window.reduce((total, w) => total + w, 0);
  const cosines = window.map((w, n) => w * Math.cos(2 * Math.PI * frequency * n));
  const sines = window.map((w, n) => w * Math.sin(2 * Math.PI * frequency * n));
  return Float64Array.from(starts, (start) => {
    const segment = samples.subarray(start, start + length);
    const mean = segment.reduce((total, x) => total + x, 0) / length;
    let [real, imaginary] = [0, 0];
    for (let n = 0; n < length; n++) {
      const x = (segment[n] ?? 0) - mean;
      real += x * (cosines[n] ?? 0);
      imaginary += x * (sines[n] ?? 0);
    }
    return (2 * (real * real + imaginary * imaginary)) / (sum * sum);
  });
}
