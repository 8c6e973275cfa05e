import { checkPositive } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import { kaiserWindow } from './kaiser-window.js';
import { type Resampled, type ResampleOptions } from './types.js';

/** Zero crossings of the kernel on each side, in periods of the lower rate. */
const CROSSINGS = 64;
/** Kaiser's parameter for 100 dB: 0.1102 (A − 8.7). */
const BETA = 0.1102 * (100 - 8.7);
/** The kernel's cut-off, and where its passband ends, in halves of the lower rate. */
const CUTOFF = 0.95;
const PASSBAND = 0.9;
/** With more phases than these each output sample computes its own weights. */
const MOST_PHASES = 1024;
const MOST_SAMPLES = 2 ** 30;

/**
 * Brings even samples to another rate.
 *
 * y(j) = Σ x(k) · h(j · from/to − k), h a sine cardinal under Kaiser's window, cut off at 0.95 of the lower half rate
 *
 * @param samples - any unit, evenly spaced, finite
 * @param options - `from` and `to`, Hz
 * @returns ceil(n · to/from) samples, the first at the time of the first, with the band in which they hold
 * @throws RangeError where a rate is not greater than 0, or the result would have more than 2³⁰ samples
 * @remarks Up to `passband`, 0.9 of half the lower rate, amplitudes hold within 0.01 %; from `stopband`, half the lower
 *   rate, on nothing comes through above −90 dB: neither does what would fold, nor images of what is there. Between them the response
 *   falls, at half height at 0.95. Within 64 periods of the lower rate from each end the response is that of a signal
 *   that rests at its mean outside. No phase is shifted.
 * @example
 * const tone = Float64Array.from({ length: 1000 }, (_, i) => Math.sin((2 * Math.PI * 20 * i) / 200));
 * const { samples, passband } = resample(tone, { from: 200, to: 100 });
 * samples.length // → 500
 * samples[251] // → 0.951
 * Math.sin(2 * Math.PI * 20 * 2.51) // → 0.951
 * passband // → 45
 * @see Ronald Crochiere and Lawrence Rabiner, Multirate Digital Signal Processing, Prentice-Hall 1983, chapter 2
 */
export function resample(samples: ArrayLike<number>, { from, to }: ResampleOptions): Resampled {
  checkPositive('resample: from', from);
  checkPositive('resample: to', to);
  const length = Math.ceil((samples.length * to) / from - 1e-9);
  if (length > MOST_SAMPLES)
    throw refusal('resample: to', `a rate that gives at most ${MOST_SAMPLES} samples`, to);
  const given = Float64Array.from(samples);
  const mean = given.reduce((sum, value) => sum + value, 0) / Math.max(given.length, 1);
  const result = new Float64Array(length).fill(mean);
  if (from === to) result.set(given);
  else addFiltered(result, { centred: given.map((value) => value - mean), from, to });
  const lower = Math.min(from, to);
  return { samples: result, sampleRate: to, passband: (PASSBAND * lower) / 2, stopband: lower / 2 };
}

interface Source extends ResampleOptions {
  readonly centred: Float64Array;
}

function addFiltered(result: Float64Array, { centred, from, to }: Source): void {
  const scale = Math.min(1, to / from);
  const half = Math.ceil(CROSSINGS / scale);
  const weigh = kernel(scale);
  const ratio = fraction(to / from);
  const stored = new Map<number, Float64Array>();
  for (let j = 0; j < result.length; j++) {
    // By whole numbers where the ratio is one of small ones, so that no rounding adds up.
    const turn = ratio ? (j * ratio.down) % ratio.up : 0;
    const base = ratio ? (j * ratio.down - turn) / ratio.up : Math.floor((j * from) / to);
    const part = ratio ? turn / ratio.up : (j * from) / to - base;
    let weights = ratio ? stored.get(turn) : undefined;
    if (!weights) {
      weights = weigh(part, half);
      if (ratio) stored.set(turn, weights);
    }
    const first = Math.max(0, base - half);
    const last = Math.min(centred.length - 1, base + half);
    const shift = half - base;
    let sum = 0;
    for (let k = first; k <= last; k++) sum += (centred[k] ?? 0) * (weights[k + shift] ?? 0);
    result[j] = (result[j] ?? 0) + sum;
  }
}

/** Weights of the samples from `half` before a place to `half` after it; the place lies `part` beyond a sample. */
function kernel(scale: number): (part: number, half: number) => Float64Array {
  const window = kaiserWindow(BETA);
  const cut = CUTOFF * scale;
  return (part, half) =>
    Float64Array.from({ length: 2 * half + 1 }, (_, i) => {
      const distance = i - half - part;
      const angle = Math.PI * cut * distance;
      const cardinal = angle === 0 ? 1 : Math.sin(angle) / angle;
      return cut * cardinal * window((distance * scale) / CROSSINGS);
    });
}

/** A ratio of whole numbers that is exact to 1e-12, where there is one with few phases; by continued fractions. */
function fraction(ratio: number): { up: number; down: number } | undefined {
  let [up, down, lastUp, lastDown] = [1, 0, 0, 1];
  let rest = ratio;
  for (let i = 0; i < 40; i++) {
    const whole = Math.floor(rest);
    [up, lastUp] = [whole * up + lastUp, up];
    [down, lastDown] = [whole * down + lastDown, down];
    if (up > MOST_PHASES || down > 2 ** 20) return undefined;
    if (up > 0 && Math.abs(up / down / ratio - 1) < 1e-12) return { up, down };
    rest = 1 / (rest - whole);
  }
  return undefined;
}
