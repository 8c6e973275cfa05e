import type { LineSpectrum } from './line-spectrum.js';
import { windowResponse } from './window-response.js';

/** Power that a sine on segment line `from`, or within half a line of it, may leak to the place `to` (in segment lines). */
export function leakage(spectrum: LineSpectrum, from: number, to: number): number {
  const { power, padding, coefficients, segmentLength } = spectrum;
  const distance = Math.abs(from - to);
  const share = Math.max(
    windowResponse(coefficients, segmentLength, distance - 0.5),
    windowResponse(coefficients, segmentLength, distance - 0.25),
    windowResponse(coefficients, segmentLength, distance + 0.5),
  );
  return share * share * (power[from * padding] ?? 0);
}
