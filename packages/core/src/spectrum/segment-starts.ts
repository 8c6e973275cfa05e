import type { Gap } from '../recording/types.js';

/** First samples of the segments that fit and meet no gap. */
export function segmentStarts(
  total: number,
  { segmentLength, step, gaps }: { segmentLength: number; step: number; gaps: readonly Gap[] },
): number[] {
  const starts: number[] = [];
  for (let start = 0; start + segmentLength <= total; start += step) {
    const end = start + segmentLength;
    if (!gaps.some((gap) => gap.start < end && gap.start + gap.count > start)) starts.push(start);
  }
  return starts;
}
