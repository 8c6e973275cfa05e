import { createFourierPlan } from './fourier-plan.js';
import type { FourierPlan } from './fourier-plan.js';
import { inverseTransform } from './inverse-transform.js';

/** Gain of a real filter at a frequency in Hz of at least 0. */
export type Gain = (frequency: number) => { readonly real: number; readonly imaginary: number };

export interface FilterOptions {
  readonly sampleRate: number;
  readonly gain: Gain;
  /** Samples after which the filter's ringing has died away. */
  readonly settle: number;
}

/** Samples that one transform takes at most, unless the filter rings for long. */
const BLOCK = 65536;

/**
 * Multiplies the spectrum of a signal by a gain, without shift in time.
 *
 * The mean is taken out; each end is continued by the signal turned about its end sample, faded out over the outer half, so that
 * the ringing of the cut falls outside. A long signal goes block by block, each with as much of its neighbours on either
 * side; two blocks share one transform. Memory is linear in the signal, and time as well.
 */
export function filterInFrequency(samples: ArrayLike<number>, options: FilterOptions): Float64Array {
  const { sampleRate, gain } = options;
  const total = samples.length;
  const settle = Math.max(1, Math.min(total - 1, Math.ceil(options.settle)));
  const whole = quickPower(total + 2 * settle);
  const length = Math.min(whole, quickPower(Math.max(BLOCK, 4 * settle)));
  const core = length - 2 * settle;
  const plan = createFourierPlan(length);
  const gains = gainTable(plan, sampleRate, gain);
  const extended = extend(samples, settle);
  const result = new Float64Array(total);
  const data = new Float64Array(2 * length);
  const out = new Float64Array(2 * length);
  for (let start = 0; start < total; start += 2 * core) {
    const cut = { settle, core };
    data.fill(0);
    loadBlock(data, extended, { ...cut, start, part: 0 });
    loadBlock(data, extended, { ...cut, start: start + core, part: 1 });
    plan.transform(out, data);
    multiplyBy(out, gains);
    inverseTransform(plan, data, out);
    for (let n = 0; n < core; n++) {
      const at = 2 * (settle + n);
      if (start + n < total) result[start + n] = data[at] ?? 0;
      if (start + core + n < total) result[start + core + n] = data[at + 1] ?? 0;
    }
  }
  return result;
}

function quickPower(length: number): number {
  return 2 ** Math.ceil(Math.log2(Math.max(8, length)));
}

/** Gains on the lines of a whole transform: the conjugate above half the rate, as a real filter has. */
function gainTable(plan: FourierPlan, sampleRate: number, gain: Gain): Float64Array {
  const { length } = plan;
  const gains = new Float64Array(2 * length);
  for (let k = 0; 2 * k <= length; k++) {
    const { real, imaginary } = gain((k * sampleRate) / length);
    gains[2 * k] = real;
    gains[2 * k + 1] = 2 * k === length || k === 0 ? 0 : imaginary;
    if (k === 0 || 2 * k === length) continue;
    gains[2 * (length - k)] = real;
    gains[2 * (length - k) + 1] = -imaginary;
  }
  return gains;
}

/** The signal less its mean, with `settle` samples more on either side. */
function extend(samples: ArrayLike<number>, settle: number): Float64Array {
  const total = samples.length;
  let sum = 0;
  for (let n = 0; n < total; n++) sum += samples[n] ?? 0;
  const mean = sum / total;
  const at = (n: number): number => (samples[n] ?? 0) - mean;
  const extended = new Float64Array(total + 2 * settle);
  for (let n = 0; n < total; n++) extended[settle + n] = at(n);
  for (let n = 1; n <= settle; n++) {
    const fade = fadeOf(settle - n, settle);
    extended[settle - n] = fade * (2 * at(0) - at(n));
    extended[settle + total - 1 + n] = fade * (2 * at(total - 1) - at(total - 1 - n));
  }
  return extended;
}

interface Block {
  readonly start: number;
  readonly settle: number;
  readonly core: number;
  readonly part: 0 | 1;
}

/** 0 at the edge, rising on a half-cosine to 1 half of `settle` inwards. */
function fadeOf(toEdge: number, settle: number): number {
  return 0.5 - 0.5 * Math.cos(Math.PI * Math.min(1, (2 * toEdge) / settle));
}

/** One block with its surroundings; where these are the signal's own they are faded out. */
function loadBlock(data: Float64Array, extended: Float64Array, { start, settle, core, part }: Block): void {
  const length = core + 2 * settle;
  for (let n = 0; n < length; n++) {
    const before = start > 0 ? fadeOf(n, settle) : 1;
    const after = start + length < extended.length ? fadeOf(length - 1 - n, settle) : 1;
    data[2 * n + part] = before * after * (extended[start + n] ?? 0);
  }
}

function multiplyBy(data: Float64Array, gains: Float64Array): void {
  for (let i = 0; i < data.length; i += 2) {
    const real = data[i] ?? 0;
    const imaginary = data[i + 1] ?? 0;
    const gainReal = gains[i] ?? 0;
    const gainImaginary = gains[i + 1] ?? 0;
    data[i] = real * gainReal - imaginary * gainImaginary;
    data[i + 1] = real * gainImaginary + imaginary * gainReal;
  }
}
