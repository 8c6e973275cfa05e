import type { Gap } from '../recording/types.js';
import type { ShaftAngle } from './shaft-angle.js';

export interface PhasorOptions {
  readonly sampleRate: number;
  readonly shaft: ShaftAngle;
  /** s, at which the phasors are wanted. */
  readonly times: Float64Array;
  /** Turns that a window spans at a time. */
  readonly turnsAt: (time: number) => number;
  readonly orders: readonly number[];
  /** Samples that count for nothing. */
  readonly gaps: readonly Gap[];
}

/** Amplitude and phase of one order at each time. */
export interface Phasors {
  readonly real: Float64Array;
  readonly imaginary: Float64Array;
  /** Mean square that noise shows beside the order, in the unit of real² + imaginary². */
  readonly noise: Float64Array;
}

/** Lines of the window beside an order at which its noise is read: clear of the order and of the next one. */
const BESIDE = [-4, -2.6, 2.6, 4];

/**
 * Fourier coefficient of each order over shaft angle, under a Hann window that moves along.
 *
 * C(o, τ) = 2 Σ w(θ − θτ) x ω e^(−ioθ) / Σ w ω, the sum over the samples as they are: each counts with the angle that it spans, which
 * is the integral over equal angle without interpolating, and leaves an order beyond half the rate where it folds to.
 */
export function orderPhasors(samples: Float64Array, options: PhasorOptions): Phasors[] {
  const { orders, times } = options;
  const { angles, speeds } = options.shaft.sample(samples.length, options.sampleRate);
  for (const { start, count } of options.gaps) speeds.fill(0, start, start + count);
  const phasors = orders.map(() => ({
    real: new Float64Array(times.length),
    imaginary: new Float64Array(times.length),
    noise: new Float64Array(times.length),
  }));
  times.forEach((time, i) => {
    const turns = options.turnsAt(time);
    const cut = windowed(samples, { angles, speeds, centre: options.shaft.angleAt(time), turns });
    orders.forEach((order, at) => {
      const phasor = phasors[at];
      if (phasor === undefined) return;
      const [real, imaginary] = coefficient(cut, order);
      phasor.real[i] = real;
      phasor.imaginary[i] = imaginary;
      phasor.noise[i] = noiseBeside(cut, order, turns);
    });
  });
  return phasors;
}

interface Cut {
  /** Weighted samples, their weights summing to 1, mean taken out. */
  readonly values: Float64Array;
  readonly angles: Float64Array;
}

function windowed(
  samples: Float64Array,
  at: { angles: Float64Array; speeds: Float64Array; centre: number; turns: number },
): Cut {
  const { angles, speeds, centre, turns } = at;
  const half = Math.PI * turns;
  const from = firstAbove(angles, centre - half);
  const to = firstAbove(angles, centre + half);
  const weights = new Float64Array(to - from);
  let [total, sum] = [0, 0];
  for (let n = from; n < to; n++) {
    const weight = (1 + Math.cos(((angles[n] ?? 0) - centre) / turns)) * (speeds[n] ?? 0);
    weights[n - from] = weight;
    total += weight;
    sum += weight * (samples[n] ?? 0);
  }
  const mean = total > 0 ? sum / total : 0;
  return {
    values: weights.map((weight, i) => (total > 0 ? weight / total : 0) * ((samples[from + i] ?? 0) - mean)),
    angles: angles.subarray(from, to),
  };
}

function firstAbove(values: Float64Array, limit: number): number {
  let low = 0;
  let high = values.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((values[middle] ?? 0) <= limit) low = middle + 1;
    else high = middle;
  }
  return low;
}

function coefficient({ values, angles }: Cut, order: number): [number, number] {
  let [real, imaginary] = [0, 0];
  for (let n = 0; n < values.length; n++) {
    const value = values[n] ?? 0;
    const angle = order * (angles[n] ?? 0);
    real += value * Math.cos(angle);
    imaginary -= value * Math.sin(angle);
  }
  return [2 * real, 2 * imaginary];
}

/** What noise shows at the order, from the middle two of four lines beside it, which a stray line or two does not move. */
function noiseBeside(cut: Cut, order: number, turns: number): number {
  const powers = BESIDE.map((line) => {
    const [real, imaginary] = coefficient(cut, Math.abs(order + line / turns));
    return real * real + imaginary * imaginary;
  }).sort((a, b) => a - b);
  // The middle two of four exponentials average 5/6 of their mean.
  return ((powers[1] ?? 0) + (powers[2] ?? 0)) / 2 / (5 / 6);
}
