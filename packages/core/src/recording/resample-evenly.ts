import { kaiserWindow } from './kaiser-window.js';

/** Samples at known times, to be brought to even ones. */
export interface Uneven {
  /** s, ascending; time of each sample */
  readonly times: Float64Array;
  /** s, of the even base that begins at the first time */
  readonly period: number;
}

/** Half the length of the interpolating kernel, samples. */
const HALF = 24;
/** Kaiser's parameter for about 80 dB. */
const WINDOW = kaiserWindow(7.857);

/**
 * Brings slowly moving rates to an even base: between samples by a sine-cardinal kernel under Kaiser's window, 48 long.
 *
 * y(u) = Σ x(k) · sinc(u − k) · w((u − k)/24)
 *
 * @param samples - one for each time
 * @param target - times of the samples and the period wanted
 * @returns samples every `period`
 * @remarks Flat to 0.1 % up to 0.8 of half the local rate; mirror images above it are at least 60 dB down. Made for
 *   rates that change little over 48 samples; where the rate wanted is the highest local one, nothing folds.
 * @see J. F. Kaiser, "Nonrecursive digital filter design using the I0-sinh window function", Proc. IEEE ISCAS 1974
 */
export function resampleEvenly(samples: Float64Array, { times, period }: Uneven): Float64Array {
  const start = times[0] ?? 0;
  const length = evenLength({ times, period });
  const result = new Float64Array(length);
  let k = 0;
  for (let j = 0; j < length; j++) {
    const time = start + j * period;
    while (k + 2 < times.length && (times[k + 1] ?? Infinity) <= time) k++;
    const span = (times[k + 1] ?? 0) - (times[k] ?? 0);
    result[j] = interpolate(samples, k + (span > 0 ? (time - (times[k] ?? 0)) / span : 0));
  }
  return result;
}

/** How many samples the even base has. */
export function evenLength({ times, period }: Uneven): number {
  return Math.floor(((times.at(-1) ?? 0) - (times[0] ?? 0)) / period + 1e-6) + 1;
}

function interpolate(samples: Float64Array, place: number): number {
  const below = Math.floor(place);
  const part = place - below;
  if (part < 1e-9) return samples[below] ?? 0;
  const last = samples.length - 1;
  let sum = 0;
  let weights = 0;
  // sin π(u − k) is the same for all k but for its sign.
  const sine = Math.sin(Math.PI * part) / Math.PI;
  for (let k = below - HALF + 1; k <= below + HALF; k++) {
    const distance = place - k;
    const sign = (below - k) % 2 === 0 ? 1 : -1;
    const weight = ((sign * sine) / distance) * WINDOW(distance / HALF);
    sum += weight * (samples[Math.min(Math.max(k, 0), last)] ?? 0);
    weights += weight;
  }
  return sum / weights;
}
