import type { LineSpectrum } from './line-spectrum.js';
import { windowResponse } from './window-response.js';

/** Share of its power that a sine on a segment line, or within half a line of it, may leak as many segment lines away. */
export function leakageShare(
  { coefficients, segmentLength }: Pick<LineSpectrum, 'coefficients' | 'segmentLength'>,
  distance: number,
): number {
  const share = Math.max(
    windowResponse(coefficients, segmentLength, distance - 0.5),
    windowResponse(coefficients, segmentLength, distance - 0.25),
    windowResponse(coefficients, segmentLength, distance + 0.5),
  );
  return share * share;
}
