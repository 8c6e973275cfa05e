import { checkPositive } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import { bandGain, SETTLE_PERIODS } from './band-gain.js';
import { checkBand } from './check-band.js';
import { checkFiniteSamples } from './check-finite-samples.js';
import { filterInFrequency } from './filter-in-frequency.js';
import type { FrequencyBand } from './types.js';

/**
 * How the amplitude within a band of frequencies goes up and down.
 *
 * e = √(x² + q²), x the signal limited as {@link bandLimit} does, q the same a quarter of a period later
 *
 * @param samples - 2 or more, uniform in time
 * @param sampleRate - Hz, greater than 0
 * @param band - Hz, from above 0 to half the sampling rate at most
 * @returns amplitude (peak) in the unit of the samples, as many
 * @throws RangeError as {@link bandLimit} does
 * @remarks It follows changes slower than about half the width of the band.
 * @example
 * ```ts
 * const samples = Float64Array.from({ length: 4000 }, (_, n) =>
 *   (1 + 0.5 * Math.cos(2 * Math.PI * 5 * n / 1000)) * Math.sin(2 * Math.PI * 200 * n / 1000));
 * const envelope = bandEnvelope(samples, 1000, { from: 150, to: 250 });
 * envelope[2000] // → 1.50
 * envelope[2100] // → 0.50
 * ```
 */
export function bandEnvelope(
  samples: ArrayLike<number>,
  sampleRate: number,
  band: FrequencyBand,
): Float64Array {
  checkPositive('bandEnvelope: sampleRate', sampleRate);
  checkBand('bandEnvelope: band', band, sampleRate);
  if (samples.length < 2) throw refusal('bandEnvelope: samples', 'at least 2 long', samples.length);
  checkFiniteSamples('bandEnvelope: samples', samples);
  const options = { sampleRate, settle: (SETTLE_PERIODS * sampleRate) / band.from };
  const share = (frequency: number): number => bandGain(band, frequency);
  const inPhase = filterInFrequency(samples, {
    ...options,
    gain: (frequency) => ({ real: share(frequency), imaginary: 0 }),
  });
  const quadrature = filterInFrequency(samples, {
    ...options,
    gain: (frequency) => ({ real: 0, imaginary: -share(frequency) }),
  });
  return inPhase.map((x, n) => Math.hypot(x, quadrature[n] ?? 0));
}
