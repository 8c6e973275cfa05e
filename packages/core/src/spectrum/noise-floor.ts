// eslint-disable-next-line @typescript-eslint/triple-slash-reference
/// <reference path="./ml-regression.d.ts" />
import { TheilSenRegression } from 'ml-regression';
import { runningMedian } from './running-median.js';

export interface FloorOptions {
  /** Independent averages behind each line. */
  readonly averages: number;
  /** First and last line to use. */
  readonly first: number;
  readonly last: number;
  /** The floor is nowhere below this. */
  readonly least: number;
}

/** Narrowest band, lines: wide enough for a median that one line of a machine does not move. */
const NARROWEST = 6;
/** Bands that share one robust line; a Theil–Sen line stands up to two of nine being wrong. */
const NEIGHBOURS = 9;
/** Lines on either side for the running median. */
const REACH = 16;

/**
 * Mean power that noise alone shows on each line of an averaged spectrum that also holds lines of a machine.
 *
 * Medians of sixth-octave bands (which lines of a machine do not move), a Theil–Sen line of log power on log frequency
 * through each nine neighbouring bands (which follows coloured noise to the ends), and never below the running
 * median over 33 lines (which follows broad humps, so that a hump is not taken for a row of peaks).
 *
 * @returns `floor` in the unit of `power`, and the degrees of freedom behind it, line by line
 */
export function noiseFloor(
  power: Float64Array,
  options: FloorOptions,
): { floor: Float64Array; degrees: Float64Array } {
  const { averages, first, last, least } = options;
  // Median over mean of a chi-square mean with 2K degrees of freedom: Wilson and Hilferty, PNAS 17, 1931.
  const bias = (1 - 1 / (9 * averages)) ** 3;
  const bands = bandMedians(power, first, last);
  const floor = new Float64Array(power.length);
  const degrees = new Float64Array(power.length).fill(averages);
  const local = runningMedian(power, { first, last, reach: REACH });
  bands.forEach((band, i) => {
    const line = robustLine(bands, i);
    for (let k = band.from; k < band.to; k++) {
      const x = Math.log(k);
      floor[k] = Math.max(Math.max(Math.exp(line.level(x)), local[k] ?? 0) / bias, least);
      degrees[k] = Math.max(1, averages * line.lines(x));
    }
  });
  return { floor, degrees };
}

interface Band {
  readonly from: number;
  readonly to: number;
  /** log of the mean line number. */
  readonly x: number;
  /** log of the median power. */
  readonly y: number;
}

function bandMedians(power: Float64Array, first: number, last: number): Band[] {
  const smallest = power.reduce((largest, value) => Math.max(largest, value), 0) * 1e-30 + Number.MIN_VALUE;
  const bands: Band[] = [];
  for (let from = first; from <= last;) {
    const width = Math.max(NARROWEST, Math.round(from * (2 ** (1 / 6) - 1)));
    const rest = last + 1 - (from + width);
    const to = rest < width / 2 ? last + 1 : from + width;
    const y = Math.log(Math.max(medianOf(power.slice(from, to)), smallest));
    bands.push({ from, to, x: Math.log((from + to - 1) / 2), y });
    from = to;
  }
  return bands;
}

/** The robust line that holds at band `i`, and the number of independent lines behind its level at x. */
function robustLine(
  bands: readonly Band[],
  i: number,
): { level: (x: number) => number; lines: (x: number) => number } {
  const start = Math.max(0, Math.min(i - (NEIGHBOURS - 1) / 2, bands.length - NEIGHBOURS));
  const near = bands.slice(start, start + NEIGHBOURS);
  const count = near.reduce((sum, band) => sum + band.to - band.from, 0);
  const mean = near.reduce((sum, band) => sum + band.x, 0) / near.length;
  const spread = near.reduce((sum, band) => sum + (band.x - mean) ** 2, 0);
  // Neighbouring lines share noise (1.5 lines wide with Hann), and a median uses about half of what it is given.
  const independent = count / 3;
  if (near.length < 3) {
    const level = near.reduce((sum, band) => sum + band.y, 0) / near.length;
    return { level: () => level, lines: () => 2 * independent };
  }
  const line = new TheilSenRegression(
    near.map((band) => band.x),
    near.map((band) => band.y),
  );
  return {
    level: (x) => line.slope * x + line.intercept,
    lines: (x) => (2 * independent) / (1 + (near.length * (x - mean) ** 2) / spread),
  };
}

/** Sorts its argument. */
function medianOf(values: Float64Array): number {
  values.sort();
  const middle = values.length >> 1;
  const upper = values[middle] ?? 0;
  return values.length % 2 === 1 ? upper : (upper + (values[middle - 1] ?? 0)) / 2;
}
