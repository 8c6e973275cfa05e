import { amplitudeSpectrum } from './amplitude-spectrum.js';
import { bandEnvelope } from './band-envelope.js';
import type { AmplitudeSpectrum, EnvelopeSpectrumOptions } from './types.js';

/**
 * How often a second the amplitude within a band of high frequencies goes up and down: the rate of the blows behind a rattle.
 *
 * A joint that knocks or a bush that catches rings the parts at a high frequency, blow by blow. The ordinary spectrum shows the
 * ring; the spectrum of its envelope shows the blows, as orders of shaft speed.
 *
 * @param samples - uniform in time
 * @param sampleRate - Hz, greater than 0
 * @param options - `band` in Hz in which the parts ring, and how the envelope is cut into segments
 * @returns frequency in Hz from 0 to half the rate; amplitude (peak) of the envelope's ups and downs, in the unit of the samples
 * @throws RangeError as {@link bandEnvelope} and {@link amplitudeSpectrum} do
 * @remarks The envelope is slower than half the width of its band; what stands above that means nothing. Two steady sines in
 *   the band beat, and their difference looks like blows. For peaks, give {@link bandEnvelope} to {@link findPeaks}.
 * @example
 * ```ts
 * const samples = Float64Array.from({ length: 8000 }, (_, n) =>
 *   Math.exp(-(n % 250) / 20) * Math.sin(2 * Math.PI * 1000 * n / 8000));
 * const { frequency, amplitude } = envelopeSpectrum(samples, 8000, { band: { from: 700, to: 1400 } });
 * const most = amplitude.indexOf(Math.max(...amplitude));
 * frequency[most] // → 32 Hz
 * ```
 * @see McFadden and Smith, "Vibration monitoring of rolling element bearings by the high-frequency resonance technique", Tribology
 *   International 17(1), 1984 (from memory)
 */
export function envelopeSpectrum(
  samples: ArrayLike<number>,
  sampleRate: number,
  { band, ...segments }: EnvelopeSpectrumOptions,
): AmplitudeSpectrum {
  return amplitudeSpectrum(bandEnvelope(samples, sampleRate, band), sampleRate, segments);
}
