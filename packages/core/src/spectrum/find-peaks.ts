import { checkPositive } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import { lineSpectrum } from './line-spectrum.js';
import { peaksOf } from './peaks-of.js';
import type { Peak, PeakOptions } from './types.js';

/**
 * Lines that stand above the noise around them, with frequency and amplitude read between the lines of the spectrum.
 *
 * A line is a peak where its averaged power over the floor exceeds the F quantile that noise alone would exceed on any
 * line in `falseAlarmRate` of recordings, where it is not the leakage of a stronger one, and where the spectrum
 * falls to half between it and any stronger one.
 *
 * @param samples - uniform in time
 * @param sampleRate - Hz, greater than 0
 * @param options - see {@link PeakOptions}
 * @returns peaks in order of frequency; amplitudes in the unit of the samples
 * @throws RangeError as {@link welch} does, and for a false-alarm rate outside 0 … 1
 * @remarks The rate is for Gaussian noise, white or coloured, whose spectrum is smooth in log frequency over about
 *   1.5 octaves. Errors are one standard error from the noise around the line; they know nothing of a drifting speed.
 *   Two sines closer than two lines (four with the wider windows) are read as one. With the flat-top window frequency is
 *   not read between lines, because its top is too flat to tell. Of a long recording 48 segments are read, spread evenly
 *   over it. The 2000 highest peaks are given where there are more.
 * @example
 * ```ts
 * let state = 1;
 * const noise = () => (state = (16807 * state) % 2147483647) / 2147483647 - 0.5;
 * const samples = Float64Array.from({ length: 4000 }, (_, n) =>
 *   0.5 * Math.sin((2 * Math.PI * 20.3 * n) / 200) + 0.4 * noise());
 * const [peak] = findPeaks(samples, 200);
 * peak.frequency // → 20.3 Hz
 * peak.amplitude // → 0.50
 * ```
 * @see Smith, Spectral Audio Signal Processing, eq. 6.30 (parabola); Hann pair derived from its transform
 */
export function findPeaks(samples: ArrayLike<number>, sampleRate: number, options: PeakOptions = {}): Peak[] {
  checkPositive('findPeaks: sampleRate', sampleRate);
  const { falseAlarmRate = 0.005, window = 'hann' } = options;
  if (!(falseAlarmRate > 0 && falseAlarmRate < 1)) {
    throw refusal('findPeaks: falseAlarmRate', 'between 0 and 1', falseAlarmRate);
  }
  const spectrum = lineSpectrum(samples, sampleRate, { ...options, padding: 1, caller: 'findPeaks' });
  return peaksOf(spectrum, { falseAlarmRate, window });
}
