import type { Recording } from '../recording/types.js';
import { runningMedian } from '../spectrum/running-median.js';
import { segmentPowers } from '../spectrum/segment-powers.js';
import { segmentStarts } from '../spectrum/segment-starts.js';
import { windowSamples } from '../spectrum/window-samples.js';
import type { ExpectedOrder } from './expected-orders.js';
import { foldedFrequency } from './folded-frequency.js';
import { likeliestPath } from './likeliest-path.js';

export interface FollowOptions {
  /** Hz, lowest and highest shaft frequency. */
  readonly range: readonly [number, number];
  readonly expected: readonly ExpectedOrder[];
}

export interface FollowedSpeed {
  /** s */
  readonly time: Float64Array;
  /** Hz, shaft frequency at each time. */
  readonly frequency: Float64Array;
  /** Mean score along the path. */
  readonly evidence: number;
  /** By how much that is above the mean score along the likeliest multiple or fraction of the path. */
  readonly margin: number;
}

/** Share of the frequency between two candidates. */
const GRID = 0.005;
/** Frames to a segment: three quarters overlap. */
const OVERLAP = 0.75;
/** Lines of the transform for each line of the segment. */
const PADDING = 4;
/** Natural logarithm of the power over the floor above which a line is little better evidence, and how much it then counts. */
const ENOUGH = 5;
const BEYOND = 0.3;
/** The same at which a line is as likely to be there as not. */
const EVEN = 1.5;
/** The likelihood where nothing stands above the floor, and where nothing could be seen: hiding must not pay. */
const NOTHING = Math.exp(-EVEN);

/**
 * The shaft frequency through a recording: the smooth path over time on which the expected orders stand highest above the noise.
 *
 * Each frame and candidate scores Σ ln(1 − q + q L) over the orders, q the chance that a line shows the order and L how much
 * likelier than noise the power there is; a line speaks once, for the likeliest order that it could be. The path with the
 * highest sum is found by dynamic programming.
 */
export function followSpeed(recording: Recording, { range, expected }: FollowOptions): FollowedSpeed {
  const { sampleRate } = recording;
  const frames = framesOf(recording, range[0]);
  const steps = Math.max(1, Math.ceil(Math.log(range[1] / range[0]) / GRID));
  const grid = Float64Array.from(
    { length: steps + 1 },
    (_, j) => range[0] * (range[1] / range[0]) ** (j / steps),
  );
  const orders = expected.filter(({ mayFold }) => mayFold);
  const places = placesOf(grid, {
    orders: orders.map(({ order }) => order),
    sampleRate,
    lines: frames.lines,
  });
  const scores = frames.likelihood.map((likelihood) =>
    grid.map((_, j) =>
      orders.reduce((score, { chance }, at) => {
        const place = places[at]?.[j] ?? -1;
        return score + Math.log(1 - chance + chance * (place < 0 ? NOTHING : (likelihood[place] ?? 0)));
      }, 0),
    ),
  );
  const { path, mean } = likeliestPath(scores);
  const rivals = RIVALS.map((ratio) => {
    const shift = Math.round(Math.log(ratio) / Math.log((grid[1] ?? 2) / (grid[0] ?? 1)));
    return meanAlong(
      scores,
      path.map((j) => j + shift),
    );
  });
  const frequency = Float64Array.from(path, (j) => grid[j] ?? NaN);
  return { time: frames.time, frequency, evidence: mean, margin: mean - Math.max(...rivals) };
}

/** Speeds that explain part of the same lines. */
const RIVALS = [1 / 3, 1 / 2, 2 / 3, 3 / 2, 2, 3];

/** −∞ where the path leaves the range. */
function meanAlong(scores: readonly Float64Array[], path: Int32Array): number {
  return (
    scores.reduce((sum, score, frame) => sum + (score[path[frame] ?? -1] ?? -Infinity), 0) / scores.length
  );
}

interface Frames {
  readonly time: Float64Array;
  /** How much likelier than noise a line makes the power on each padded line. */
  readonly likelihood: readonly Float64Array[];
  /** Padded lines from one end of the spectrum to half the rate. */
  readonly lines: number;
}

function framesOf({ channels, sampleRate, sampling }: Recording, lowest: number): Frames {
  const total = channels[0]?.samples.length ?? 0;
  const seconds = Math.min(1, Math.max(0.3, total / sampleRate / 32, 3 / lowest));
  const segmentLength = Math.max(16, Math.min(total, Math.round(seconds * sampleRate)));
  const step = Math.max(1, Math.round((1 - OVERLAP) * segmentLength));
  const starts = segmentStarts(total, { segmentLength, step, gaps: sampling.gaps });
  const window = windowSamples('hann', segmentLength);
  const length = 2 ** Math.ceil(Math.log2(PADDING * segmentLength));
  const lines = length / 2;
  const spectra = channels.map(({ samples }) =>
    segmentPowers(samples, { starts, window, detrend: 'linear', length }),
  );
  const reach = Math.ceil((12 * length) / segmentLength);
  const likelihood = starts.map((_, frame) => {
    const sum = new Float64Array(lines + 1);
    for (const spectrum of spectra) addRatio(sum, spectrum[frame] ?? sum, reach);
    return sum.map((value) => {
      const height = Math.max(0, Math.log(value / channels.length));
      return Math.exp(Math.min(height, ENOUGH) + BEYOND * Math.max(0, height - ENOUGH) - EVEN);
    });
  });
  return {
    time: Float64Array.from(starts, (start) => (start + segmentLength / 2) / sampleRate),
    likelihood,
    lines,
  };
}

/** Adds the power over its running median, as a mean that noise would show. */
function addRatio(sum: Float64Array, power: Float64Array, reach: number): void {
  const last = power.length - 1;
  const medians = runningMedian(power, { first: 1, last, reach: Math.min(reach, last >> 1) });
  for (let k = 1; k <= last; k++) {
    const noise = (medians[k] ?? 0) / Math.LN2;
    if (noise > 0) sum[k] = (sum[k] ?? 0) + (power[k] ?? 0) / noise;
  }
}

/**
 * Padded line on which each order of each candidate shows; −1 where it lies beside 0 or half the rate, or where a likelier order
 * of the same candidate shows.
 */
function placesOf(
  grid: Float64Array,
  { orders, sampleRate, lines }: { orders: readonly number[]; sampleRate: number; lines: number },
): Int32Array[] {
  const places = orders.map(() => new Int32Array(grid.length));
  grid.forEach((frequency, j) => {
    orders.forEach((order, at) => {
      const apparent = foldedFrequency(order * frequency, sampleRate);
      const place = Math.round((2 * lines * apparent) / sampleRate);
      const taken = places.slice(0, at).some((other) => Math.abs((other[j] ?? -1) - place) < 2 * PADDING);
      const hidden = taken || place < 2 * PADDING || place > lines - 2 * PADDING;
      const row = places[at];
      if (row !== undefined) row[j] = hidden ? -1 : place;
    });
  });
  return places;
}
