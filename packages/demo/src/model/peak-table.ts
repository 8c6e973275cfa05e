import type { ChannelPeak } from '@sternline/core';

/** A table of peaks as plain text. */
export interface PeakTable {
  readonly caption: string;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/**
 * The peaks of a channel as a table.
 *
 * @param peaks - strongest first
 * @param speed - of the shaft, rad/s
 * @returns caption, columns with their units, and a row a peak
 */
export function peakTable(peaks: readonly ChannelPeak[], speed: number): PeakTable {
  const unit = peaks[0]?.unit ?? '';
  const turns = speed / (2 * Math.PI);
  return {
    caption: 'Peaks above the noise, strongest first',
    columns: ['Frequency, Hz', '± Hz', '× shaft speed', `Amplitude, ${unit}`, `± ${unit}`, 'Above noise, dB'],
    rows: peaks.map((peak) => [
      figure(peak.frequency, 4),
      figure(peak.frequencyError, 2),
      (peak.frequency / turns).toFixed(2),
      figure(peak.amplitude, 3),
      figure(peak.amplitudeError, 2),
      peak.prominence.toFixed(0),
    ]),
  };
}

function figure(value: number, digits: number): string {
  return Number(value.toPrecision(digits)).toString();
}
