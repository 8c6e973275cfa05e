import { leakageShare } from './leakage-share.js';
import type { LineSpectrum } from './line-spectrum.js';

/** Power that a sine on segment line `from`, or within half a line of it, may leak to the place `to` (in segment lines). */
export function leakage(spectrum: LineSpectrum, from: number, to: number): number {
  return leakageShare(spectrum, Math.abs(from - to)) * (spectrum.power[from * spectrum.padding] ?? 0);
}
