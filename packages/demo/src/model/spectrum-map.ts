import { amplitudeSpectrum } from '@sternline/core';
import type { Channel, Recording } from '@sternline/core';
import type { SpectrumMap } from './analysis-types.js';

/** A page is not wider than this many columns that an eye could part. */
const MOST_COLUMNS = 240;
/** So that the map of a fast recording stays within some megabytes. */
const MOST_LINES = 8192;
/** Lines that part neighbouring orders in a column at least. */
const LINES_AN_ORDER = 4;
/** s; longer pieces would show nothing that the spectrum does not. */
const LONGEST_PIECE = 0.75;
/** Pieces of the recording that are looked at in a column, which bounds the work on long recordings. */
const MOST_PIECES = 2;

/**
 * A channel over time and frequency, one spectrum a column.
 *
 * @param channel - samples
 * @param recording - rate and gaps
 * @param shaftFrequency - Hz; sets how fine the lines are
 * @returns the map; a column whose samples are missing stays empty. Undefined where the recording is too short for columns
 */
export function spectrumMap(
  channel: Channel,
  { sampleRate, sampling }: Pick<Recording, 'sampleRate' | 'sampling'>,
  shaftFrequency: number,
): SpectrumMap | undefined {
  const count = channel.samples.length;
  const segmentLength = pieceLength({ count, sampleRate, shaftFrequency });
  const columns = Math.min(MOST_COLUMNS, Math.floor((4 * count) / segmentLength) - 3);
  if (columns < 8) return undefined;
  const hop = (count - segmentLength) / (columns - 1);
  const pooled = Math.ceil(segmentLength / 2 / MOST_LINES);
  const lines = Math.floor(segmentLength / 2 / pooled) + 1;
  const amplitude = new Float32Array(columns * lines);
  const wide = Math.max(
    segmentLength,
    Math.min(Math.floor(hop), (MOST_PIECES * segmentLength + segmentLength) / 2),
  );
  for (let column = 0; column < columns; column++) {
    const start = Math.floor(Math.min(column * hop, count - wide));
    const gaps = sampling.gaps.map((gap) => ({ start: gap.start - start, count: gap.count }));
    if (gaps.some((gap) => gap.start < wide && gap.start + gap.count > 0)) continue;
    const piece = channel.samples.subarray(start, start + wide);
    const spectrum = amplitudeSpectrum(piece, sampleRate, { segmentLength }).amplitude;
    pool(spectrum, amplitude.subarray(column * lines, (column + 1) * lines), pooled);
  }
  return {
    ...{ channel: channel.name, unit: channel.unit, columns, lines, amplitude },
    start: segmentLength / 2 / sampleRate,
    timeStep: hop / sampleRate,
    step: (pooled * sampleRate) / segmentLength,
  };
}

/**
 * A sine that sweeps shaft frequency F in the whole duration D is sharpest in pieces of √(D/F), the geometric middle of smearing
 * by speed and by shortness. In powers of two.
 */
function pieceLength(of: { count: number; sampleRate: number; shaftFrequency: number }): number {
  const { count, sampleRate } = of;
  const shaft = Math.max(of.shaftFrequency, 0.5);
  const sharpest = sampleRate * Math.min(LONGEST_PIECE, Math.sqrt(count / sampleRate / shaft));
  const parted = (LINES_AN_ORDER * sampleRate) / shaft;
  return 2 ** Math.round(Math.log2(Math.max(32, Math.min(Math.max(parted, sharpest), count / 12))));
}

/** The highest of neighbouring lines, so that none is lost. The first two hold what is left of the mean. */
function pool(from: Float64Array, to: Float32Array, size: number): void {
  for (let line = 2; line < from.length; line++) {
    const place = Math.round(line / size);
    const value = from[line] ?? 0;
    if (place < to.length && value > (to[place] ?? 0)) to[place] = value;
  }
}
