import { checkPositive } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import { bandGain, SETTLE_PERIODS } from './band-gain.js';
import { checkBand } from './check-band.js';
import { checkFiniteSamples } from './check-finite-samples.js';
import { filterInFrequency } from './filter-in-frequency.js';
import type { IntegrateOptions } from './types.js';

/**
 * Vibration velocity or displacement from acceleration, within a band.
 *
 * V(f) = A(f) / 2πif, X(f) = −A(f) / (2πf)², both limited as {@link bandLimit} does
 *
 * @param samples - acceleration, m/s², 2 or more, uniform in time
 * @param sampleRate - Hz, greater than 0
 * @param options - the `band` in Hz, and what to give
 * @returns velocity in m/s or displacement in m, as many samples
 * @throws RangeError as {@link bandLimit} does
 * @remarks Noise and tilt of the phone grow as 1/f and 1/f² on the way, so a figure without its band means nothing. Below
 *   5 Hz a phone gives little but its own drift.
 * @example
 * ```ts
 * const turn = 2 * Math.PI * 25;
 * const acceleration = Float64Array.from({ length: 2000 }, (_, n) => 9.81 + turn * 0.01 * Math.sin(turn * n / 500));
 * const velocity = integrateAcceleration(acceleration, 500, { band: { from: 10, to: 200 } });
 * velocity[1000] // → -0.0100
 * ```
 */
export function integrateAcceleration(
  samples: ArrayLike<number>,
  sampleRate: number,
  { band, give = 'velocity' }: IntegrateOptions,
): Float64Array {
  checkPositive('integrateAcceleration: sampleRate', sampleRate);
  checkBand('integrateAcceleration: band', band, sampleRate);
  if (samples.length < 2) throw refusal('integrateAcceleration: samples', 'at least 2 long', samples.length);
  checkFiniteSamples('integrateAcceleration: samples', samples);
  const gain = (frequency: number) => {
    const share = bandGain(band, frequency);
    if (share === 0) return { real: 0, imaginary: 0 };
    const turning = 2 * Math.PI * frequency;
    return give === 'velocity'
      ? { real: 0, imaginary: -share / turning }
      : { real: -share / turning ** 2, imaginary: 0 };
  };
  return filterInFrequency(samples, { sampleRate, gain, settle: (SETTLE_PERIODS * sampleRate) / band.from });
}
