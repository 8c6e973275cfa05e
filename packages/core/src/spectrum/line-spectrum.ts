import type { Gap } from '../recording/types.js';
import { averagePower } from './average-power.js';
import { betweenLines } from './between-lines.js';
import { createFourierPlan } from './fourier-plan.js';
import type { FourierPlan } from './fourier-plan.js';
import { noiseFloor } from './noise-floor.js';
import type { SegmentOptions } from './types.js';
import { windowCoefficients } from './window-coefficients.js';

export interface LineSpectrumOptions extends SegmentOptions {
  readonly segmentLength?: number;
  /** Lines of the spectrum for each line of the segment. */
  readonly padding: 1 | 4;
  /** A plan of the segment's length, or twice that with a padding of 4. */
  readonly plan?: FourierPlan;
  readonly caller: string;
}

/** More segments than this tell no more of a line than they cost: the floor is known to a tenth with half of them. */
const MOST_SEGMENTS = 48;

/** A spectrum with its noise floor, ready for judging what stands out of it. */
export interface LineSpectrum {
  /** Mean square of a sine on line k / padding, unit²: A²/2, noise included. */
  readonly power: Float64Array;
  /** Lines of `power` between two lines of the segment. */
  readonly padding: number;
  /** Mean square that noise alone shows on segment line k, unit². */
  readonly floor: Float64Array;
  /** Degrees of freedom behind `floor`, line by line. */
  readonly floorDegrees: Float64Array;
  /** Number of independent segments that would average the power of noise as well as the overlapping ones do. */
  readonly averages: number;
  /** The same for the amplitude of a sine, and for its frequency, in noise. */
  readonly amplitudeAverages: number;
  readonly frequencyAverages: number;
  readonly segmentLength: number;
  /** Hz between two lines of the segment. */
  readonly resolution: number;
  /** First and last segment line that can be judged: clear of the mean and of half the rate. */
  readonly first: number;
  readonly last: number;
  readonly coefficients: readonly number[];
}

/** Averages the spectrum of `samples` and fits its noise floor. */
export function lineSpectrum(
  samples: ArrayLike<number>,
  sampleRate: number,
  options: LineSpectrumOptions,
): LineSpectrum {
  const segmentLength =
    options.segmentLength ?? defaultSegmentLength(samples.length, { ...options, sampleRate });
  const { padding, window = 'hann' } = options;
  const coefficients = windowCoefficients(`${options.caller}: window`, window);
  const plan = options.plan ?? createFourierPlan(Math.min(padding, 2) * segmentLength);
  const average = averagePower(samples, {
    ...options,
    window,
    segmentLength,
    plan,
    mostSegments: MOST_SEGMENTS,
  });
  const scale = 2 / (average.sum * average.sum);
  const { window: weights } = average;
  const lines = average.power.map((value) => value * scale);
  const power = padding === 4 ? betweenLines(lines, plan) : lines;
  const averages = independentAverages(weights, { ...average, exponent: 2 });
  const base =
    padding === 1
      ? power
      : Float64Array.from({ length: Math.floor(segmentLength / 2) + 1 }, (_, k) => power[k * padding] ?? 0);
  const first = coefficients.length;
  const last = Math.ceil(segmentLength / 2) - coefficients.length;
  const { floor, degrees } = noiseFloor(base, { averages, first, last, least: roundingPower(samples) });
  return {
    power,
    padding,
    floor,
    floorDegrees: degrees,
    averages,
    amplitudeAverages: independentAverages(weights, { ...average, exponent: 1 }),
    frequencyAverages: independentAverages(slopeWeights(weights), { ...average, exponent: 1 }),
    segmentLength,
    resolution: sampleRate / segmentLength,
    first,
    last,
    coefficients,
  };
}

/** What the arithmetic alone leaves of samples of this size: a still recording must not show lines of rounding. */
function roundingPower(samples: ArrayLike<number>): number {
  let largest = 0;
  for (let n = 0, end = samples.length; n < end; n++) largest = Math.max(largest, Math.abs(samples[n] ?? 0));
  return (1e-13 * largest) ** 2;
}

/** Seven half-overlapping segments or more; 4 s at most, because a small drive does not hold its speed for longer. */
export function defaultSegmentLength(
  total: number,
  { sampleRate, gaps = [] }: { sampleRate: number; gaps?: readonly Gap[] },
): number {
  const wanted = Math.min(Math.floor(total / 4), Math.round(4 * sampleRate), longestRun(total, gaps));
  const length = Math.max(wanted, Math.min(total, 16), 2);
  return quickLength(length);
}

/** The longest of 2ⁿ × (4, 5, 6 or 7) up to `length`, which transform quickly; powers of two alone above 16 384. */
function quickLength(length: number): number {
  if (length < 64) return length;
  const octave = 2 ** Math.floor(Math.log2(length));
  return length > 16384 ? octave : (octave / 4) * Math.floor((4 * length) / octave);
}

/** Longest stretch without a missing sample, halved where gaps would else meet every segment. */
function longestRun(total: number, gaps: readonly Gap[]): number {
  if (gaps.length === 0) return total;
  let longest = 0;
  let from = 0;
  for (const gap of [...gaps].sort((a, b) => a.start - b.start)) {
    longest = Math.max(longest, gap.start - from);
    from = Math.max(from, gap.start + gap.count);
  }
  return Math.floor(Math.max(longest, total - from) / 2);
}

/**
 * K / (1 + 2 Σ (1 − j/K) ρⱼᵖ), ρⱼ the correlation of the weights with themselves j steps on (Welch 1967 with p = 2 for powers;
 * p = 1 for what is linear in the noise, where the sine keeps the segments in step).
 */
function independentAverages(
  weights: Float64Array,
  { step, segments, exponent }: { step: number; segments: number; exponent: 1 | 2 },
): number {
  const squares = weights.reduce((total, w) => total + w * w, 0);
  let inflation = 1;
  for (let j = 1; j < segments && j * step < weights.length; j++) {
    let product = 0;
    for (let n = j * step; n < weights.length; n++)
      product += (weights[n] ?? 0) * (weights[n - j * step] ?? 0);
    inflation += 2 * (1 - j / segments) * (product / squares) ** exponent;
  }
  return segments / inflation;
}

/** How the noise at each sample tilts the pair of lines beside a peak, which is what its frequency is read from. */
function slopeWeights(window: Float64Array): Float64Array {
  return window.map((w, n) => w * Math.sin((2 * Math.PI * n) / window.length));
}
