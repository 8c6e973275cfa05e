import { quantile } from '../numerics/quantile.js';
import { type Alignment, type Recording } from './types.js';

/** s, of one level. */
const BLOCK = 0.05;
/** Levels in a recording, that the cost stays bounded. */
const MOST_BLOCKS = 12_000;
/** Levels that must overlap: five seconds. */
const LEAST_OVERLAP = 100;
/** Correlation below which two courses have nothing in common. */
const LEAST_CORRELATION = 0.5;

/**
 * Finds the offset at which the levels of two recordings rise and fall together.
 *
 * @param pair - two recordings
 * @param longestOffset - s
 * @returns undefined where they do not
 */
export function alignByLevel(
  pair: readonly [Recording, Recording],
  longestOffset: number,
): Alignment | undefined {
  const longest = Math.max(
    ...pair.map(({ channels, sampleRate }) => (channels[0]?.samples.length ?? 0) / sampleRate),
  );
  const block = Math.max(BLOCK, longest / MOST_BLOCKS, ...pair.map(({ sampleRate }) => 4 / sampleRate));
  const [a, b] = [levelCourse(pair[0], block), levelCourse(pair[1], block)];
  const most = Math.min(Math.floor(longestOffset / block), Math.max(a.length, b.length));
  const least = Math.max(LEAST_OVERLAP, Math.min(a.length, b.length) / 4);
  const lags: number[] = [];
  const scores: number[] = [];
  for (let lag = -most; lag <= most; lag++) {
    if (Math.min(a.length, b.length + lag) - Math.max(0, lag) < least) continue;
    lags.push(lag);
    scores.push(correlation([a, b], lag));
  }
  const peak = scores.reduce((best, score, i) => (score > (scores[best] ?? -1) ? i : best), 0);
  const height = scores[peak] ?? 0;
  if (height < LEAST_CORRELATION) return undefined;
  const { beside, rival } = rivals(scores, peak);
  const lag = (lags[peak] ?? 0) + beside;
  const overlap = Math.min(a.length, b.length);
  return {
    offset: lag * block,
    offsetError: peakError({ scores, peak, overlap }) * block,
    drift: 0,
    driftError: NaN,
    from: 'level',
    marks: 0,
    // Of Fisher's z, whose scatter does not depend on the height.
    confidence: Math.max(
      0,
      1 - Math.atanh(Math.min(Math.max(rival, 0), 0.999)) / Math.atanh(Math.min(height, 0.999)),
    ),
  };
}

/** dB of the samples' differences in blocks, which leave gravity aside. */
function levelCourse({ channels, sampleRate }: Recording, block: number): Float64Array {
  const samples = channels[0]?.samples.length ?? 0;
  const count = Math.floor(samples / sampleRate / block);
  const course = Float64Array.from({ length: count }, (_, k) => {
    const from = Math.max(1, Math.round(k * block * sampleRate));
    const to = Math.round((k + 1) * block * sampleRate);
    let sum = 0;
    for (const { samples: values } of channels)
      for (let i = from; i < to; i++) sum += ((values[i] ?? 0) - (values[i - 1] ?? 0)) ** 2;
    return sum / Math.max(to - from, 1);
  });
  const floor = 1e-3 * quantile(course, 0.1) + 1e-30;
  return course.map((power) => 10 * Math.log10(power + floor));
}

/** Pearson's correlation over the overlap where the second is moved by `lag`. */
function correlation([a, b]: readonly [Float64Array, Float64Array], lag: number): number {
  const from = Math.max(0, lag);
  const to = Math.min(a.length, b.length + lag);
  const n = to - from;
  let [sa, sb, saa, sbb, sab] = [0, 0, 0, 0, 0];
  for (let i = from; i < to; i++) {
    const x = a[i] ?? 0;
    const y = b[i - lag] ?? 0;
    sa += x;
    sb += y;
    saa += x * x;
    sbb += y * y;
    sab += x * y;
  }
  const spread = (saa - (sa * sa) / n) * (sbb - (sb * sb) / n);
  return spread > 0 ? (sab - (sa * sb) / n) / Math.sqrt(spread) : 0;
}

/** Where between lags the peak stands, and the highest correlation beyond its own hill. */
function rivals(scores: readonly number[], peak: number): { beside: number; rival: number } {
  const at = (i: number): number => scores[i] ?? -1;
  const bend = at(peak - 1) - 2 * at(peak) + at(peak + 1);
  const beside = bend < 0 ? Math.max(-0.5, Math.min(0.5, (0.5 * (at(peak - 1) - at(peak + 1))) / bend)) : 0;
  let left = peak;
  while (left > 0 && at(left - 1) < at(left)) left--;
  let right = peak;
  while (right + 1 < scores.length && at(right + 1) < at(right)) right++;
  const others = scores.filter((_, i) => i < left || i > right);
  return { beside, rival: others.reduce((most, score) => Math.max(most, score), 0) };
}

/** Standard error of a correlation peak in lags: √((1 − ρ²) / (n · −ρ″)), and the grid it was found on. */
function peakError({
  scores,
  peak,
  overlap,
}: {
  scores: readonly number[];
  peak: number;
  overlap: number;
}): number {
  const height = scores[peak] ?? 0;
  const bend = Math.max(1e-6, 2 * height - (scores[peak - 1] ?? 0) - (scores[peak + 1] ?? 0));
  return Math.sqrt(Math.max(1e-6, 1 - height * height) / (overlap * bend)) + 0.1;
}
