/** What one pass over samples shows. */
export interface Scan {
  readonly highest: Extreme;
  readonly lowest: Extreme;
  /** Samples equal to the one before. */
  readonly repeats: number;
  /** Samples in the longest run of equal ones. */
  readonly longestRun: number;
}

/** How often, and how many times in a row, samples stand at the extreme of one side. */
export interface Extreme {
  readonly level: number;
  readonly count: number;
  readonly longest: number;
}

/**
 * Looks for extremes and standstill in one pass, since a long recording has tens of millions of samples.
 *
 * @param samples - finite samples
 */
export function scanSamples(samples: Float64Array): Scan {
  let [high, highCount, highLongest] = [-Infinity, 0, 0];
  let [low, lowCount, lowLongest] = [Infinity, 0, 0];
  let repeats = 0;
  let run = 0;
  let longestRun = 0;
  let last = NaN;
  for (const sample of samples) {
    if (sample === last) {
      repeats++;
      run++;
    } else run = 1;
    if (run > longestRun) longestRun = run;
    last = sample;
    if (sample >= high) {
      if (sample > high) [high, highCount, highLongest] = [sample, 0, 0];
      highCount++;
      if (run > highLongest) highLongest = run;
    }
    if (sample <= low) {
      if (sample < low) [low, lowCount, lowLongest] = [sample, 0, 0];
      lowCount++;
      if (run > lowLongest) lowLongest = run;
    }
  }
  return {
    highest: { level: high, count: highCount, longest: highLongest },
    lowest: { level: low, count: lowCount, longest: lowLongest },
    repeats,
    longestRun,
  };
}
