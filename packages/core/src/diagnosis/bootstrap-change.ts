import { fUpperQuantile } from '../numerics/f-upper-quantile.js';
import type { Random } from '../numerics/random.js';

/** One order in one recording. */
export interface PowerSeries {
  /** Mean square of the order's sine segment by segment, noise included, unit². */
  readonly powers: Float64Array;
  /** Mean square of the noise alone, unit². */
  readonly noise: number;
}

export interface BootstrapOptions {
  readonly random: Random;
  /** See `CompareRecordingsOptions`. */
  readonly repeatability: number;
  readonly confidence: number;
}

export interface Change {
  readonly before: { readonly amplitude: number; readonly amplitudeError: number };
  readonly after: { readonly amplitude: number; readonly amplitudeError: number };
  readonly ratio: number;
  readonly interval: readonly [number, number];
  /** dB */
  readonly decibelsError: number;
}

const DRAWS = 1000;
/** Correlation of what noise does to a sine in two half-overlapping Hann segments (Welch 1967). */
const OVERLAP = 1 / 6;
/** Neighbours share half their samples and what wanders slowly, so they are drawn in runs of this many or more. */
const SHORTEST_RUN = 3;

/**
 * Change of an amplitude with the interval that drawing the segments anew gives it.
 *
 * Each draw lays runs of neighbouring segments of a recording end to end until it is as long, and takes
 * A² = 2 (P̄ − N). What few runs leave out is made good by stretching each draw's departure from P̄ by
 * √(n/(n − 1)) t/z, n the number of runs, and by what the cuts between runs lose of the overlap's correlation.
 *
 * @see Efron and Tibshirani, "An Introduction to the Bootstrap", 1993, §8.6 (moving blocks); Hesterberg, "What Teachers
 *   Should Know About the Bootstrap", The American Statistician 69(4), 2015, §5.2 (the interval of few samples is too
 *   narrow by that factor)
 */
export function bootstrapChange(before: PowerSeries, after: PowerSeries, options: BootstrapOptions): Change {
  const { random, repeatability, confidence } = options;
  const [first, second] = [before, after].map((series) => drawAmplitudes(series, options)) as [
    Float64Array,
    Float64Array,
  ];
  const ratios = first.map((amplitude, i) => {
    const runs = repeatability > 0 ? Math.exp(Math.SQRT2 * repeatability * random.normal()) : 1;
    return ratioOf(amplitude, second[i] ?? 0) * runs;
  });
  ratios.sort();
  const tail = (1 - confidence) / 2;
  const [was, is] = [amplitudeOf(before, meanOf(before.powers)), amplitudeOf(after, meanOf(after.powers))];
  return {
    before: { amplitude: was, amplitudeError: deviation(first) },
    after: { amplitude: is, amplitudeError: deviation(second) },
    ratio: ratioOf(was, is),
    interval: [at(ratios, tail), at(ratios, 1 - tail)],
    decibelsError: deviation(ratios.filter((r) => r > 0 && r < Infinity).map((r) => 20 * Math.log10(r))),
  };
}

function amplitudeOf({ noise }: PowerSeries, power: number): number {
  return Math.sqrt(2 * Math.max(power - noise, 0));
}

/** Nothing before and nothing after is no change. */
function ratioOf(before: number, after: number): number {
  if (before > 0) return after / before;
  return after > 0 ? Infinity : 1;
}

function drawAmplitudes(series: PowerSeries, { random, confidence }: BootstrapOptions): Float64Array {
  const { powers } = series;
  const count = powers.length;
  const run = Math.min(count, Math.max(SHORTEST_RUN, Math.round(Math.cbrt(count))));
  const runs = count / run;
  const cuts = Math.sqrt((1 + 2 * OVERLAP) / (1 + (2 * OVERLAP * (run - 1)) / run));
  const stretch = cuts * stretchFor(runs, confidence);
  const sums = runSums(powers, run);
  const mean = meanOf(powers);
  const drawn = Math.max(1, Math.round(runs));
  return Float64Array.from({ length: DRAWS }, () => {
    let sum = 0;
    for (let i = 0; i < drawn; i++) sum += sums[Math.floor(random.uniform() * count)] ?? 0;
    return amplitudeOf(series, mean + stretch * (sum / (drawn * run) - mean));
  });
}

function stretchFor(runs: number, confidence: number): number {
  const spare = Math.max(runs - 1, 1);
  const [t, z] = [spare, 1e6].map((degrees) => Math.sqrt(fUpperQuantile(1 - confidence, [1, degrees])));
  return Math.sqrt((spare + 1) / spare) * ((t ?? 1) / (z ?? 1));
}

/** Sum of the run that begins at each segment, going on from the first after the last. */
function runSums(powers: Float64Array, run: number): Float64Array {
  return powers.map((_, start) => {
    let sum = 0;
    for (let i = 0; i < run; i++) sum += powers[(start + i) % powers.length] ?? 0;
    return sum;
  });
}

function meanOf(values: Float64Array): number {
  return values.reduce((sum, x) => sum + x, 0) / values.length;
}

function deviation(values: Float64Array): number {
  const mean = meanOf(values);
  return Math.sqrt(values.reduce((sum, x) => sum + (x - mean) ** 2, 0) / values.length);
}

function at(sorted: Float64Array, share: number): number {
  return sorted[Math.min(sorted.length - 1, Math.max(0, Math.round(share * (sorted.length - 1))))] ?? 1;
}
