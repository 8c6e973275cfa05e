import type { SpectrumLines } from './spectrum-geometry.js';

/**
 * Every line of a spectrum as comma-separated text.
 *
 * @param lines - the spectrum
 * @param unit - of its amplitudes
 * @returns a header and a row a line
 */
export function spectrumCsv(lines: SpectrumLines, unit: string): string {
  const rows = Array.from(lines.amplitude, (value, index) => `${index * lines.step},${value}`);
  return [`frequency (Hz),peak amplitude (${unit})`, ...rows].join('\r\n') + '\r\n';
}
