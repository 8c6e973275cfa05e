import { refusal } from '../internal/refuse.js';
import type { FrequencyBand } from './types.js';

/** @throws RangeError unless `band` rises from above 0 to half the rate at most; `where` reads `'function: argument'`. */
export function checkBand(where: string, { from, to }: FrequencyBand, sampleRate: number): void {
  if (from > 0 && to > from && to <= sampleRate / 2) return;
  throw refusal(where, 'two rising frequencies above 0 up to half the sampling rate', `${from} and ${to}`);
}
