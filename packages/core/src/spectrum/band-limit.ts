import { checkPositive } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import { bandGain, SETTLE_PERIODS } from './band-gain.js';
import { checkBand } from './check-band.js';
import { checkFiniteSamples } from './check-finite-samples.js';
import { filterInFrequency } from './filter-in-frequency.js';
import type { FrequencyBand } from './types.js';

/**
 * What a signal holds within a band of frequencies, without shift in time.
 *
 * The spectrum is multiplied by 1 within the band, falling on a half-cosine over log frequency to 0 a third of an octave
 * outside either edge. There is no phase: a sine in the band comes out as it went in.
 *
 * @param samples - 2 or more, uniform in time
 * @param sampleRate - Hz, greater than 0
 * @param band - Hz, from above 0 to half the sampling rate at most
 * @returns as many samples, without mean
 * @throws RangeError for a band outside that, fewer than 2 samples or one that is not finite
 * @remarks Each end is continued by the signal turned about its end sample; within about 2 / from of an end the result is less
 *   sure. Samples missing in the recording (its gaps) lie on straight lines and ring like any other kink.
 * @example
 * ```ts
 * const samples = Float64Array.from({ length: 1000 }, (_, n) =>
 *   Math.sin(2 * Math.PI * 5 * n / 200) + Math.sin(2 * Math.PI * 40 * n / 200));
 * const low = bandLimit(samples, 200, { from: 2, to: 10 });
 * low[510] // → -1.00
 * low[505] // → -0.71
 * ```
 */
export function bandLimit(samples: ArrayLike<number>, sampleRate: number, band: FrequencyBand): Float64Array {
  checkPositive('bandLimit: sampleRate', sampleRate);
  checkBand('bandLimit: band', band, sampleRate);
  if (samples.length < 2) throw refusal('bandLimit: samples', 'at least 2 long', samples.length);
  checkFiniteSamples('bandLimit: samples', samples);
  const gain = (frequency: number) => ({ real: bandGain(band, frequency), imaginary: 0 });
  return filterInFrequency(samples, { sampleRate, gain, settle: (SETTLE_PERIODS * sampleRate) / band.from });
}
