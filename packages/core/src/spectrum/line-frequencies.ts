/**
 * Frequencies of the lines of a one-sided spectrum: k · fs / N, k = 0 … ⌊N/2⌋.
 *
 * @param length - N, samples in a transform
 * @param sampleRate - fs, Hz
 * @returns Hz
 */
export function lineFrequencies(length: number, sampleRate: number): Float64Array {
  return Float64Array.from({ length: Math.floor(length / 2) + 1 }, (_, k) => (k * sampleRate) / length);
}
