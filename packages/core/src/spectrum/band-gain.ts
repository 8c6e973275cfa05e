import type { FrequencyBand } from './types.js';

/** From the edge of a band, where all passes, to where nothing does: a third of an octave. */
const SKIRT = 2 ** (1 / 3);

/** Periods of the lowest frequency after which a band filter with such skirts has rung out. */
export const SETTLE_PERIODS = 10;

/**
 * Share of the amplitude that a band passes: 1 within, and a half-cosine over log frequency down to 0 a third of an octave outside.
 */
export function bandGain({ from, to }: FrequencyBand, frequency: number): number {
  return rise(frequency, from) * rise(to, frequency);
}

/** 1 where `value` is at least `edge`, 0 where it is a third of an octave below. */
function rise(value: number, edge: number): number {
  if (value >= edge) return 1;
  const low = edge / SKIRT;
  if (value <= low) return 0;
  return 0.5 - 0.5 * Math.cos((Math.PI * Math.log(value / low)) / Math.log(SKIRT));
}
