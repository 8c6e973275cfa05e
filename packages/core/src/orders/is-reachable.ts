import type { LineSpectrum } from '../spectrum/line-spectrum.js';

/** Whether a line at this apparent frequency (Hz) would stand clear of the mean and of half the rate. */
export function isReachable({ resolution, first, last }: LineSpectrum, frequency: number): boolean {
  const place = frequency / resolution;
  return place >= first && place <= last;
}
