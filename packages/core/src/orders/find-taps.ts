/** Times the usual size at which a sample is a blow. */
const STANDS_OUT = 8;
/** Times the largest of what came just before: a ring only falls, a blow rises. */
const RISES = 1.7;
/** s, that count as just before, and within which a second blow is the bounce of the first. */
const BEFORE = 0.12;

/**
 * Samples at which a quiet signal is struck: far above what the signal usually is, above what it was just before, and no less than
 * a fifth of the strongest.
 */
export function findTaps(samples: Float64Array, sampleRate: number): number[] {
  const sizes = samples.map(Math.abs);
  const sorted = Float64Array.from(sizes).sort();
  const usual = sorted[Math.floor(sorted.length / 4)] ?? 0;
  const largest = sorted.at(-1) ?? 0;
  const least = Math.max(STANDS_OUT * usual, largest / 5);
  const reach = Math.max(1, Math.round(BEFORE * sampleRate));
  const most = (from: number, to: number): number =>
    sizes.subarray(Math.max(0, from), to).reduce((a, b) => Math.max(a, b), 0);
  const taps: number[] = [];
  for (let n = 0; n < sizes.length; n++) {
    const size = sizes[n] ?? 0;
    if (!(size > least) || size < RISES * most(n - reach, n)) continue;
    const top = sizes.indexOf(most(n, n + reach), n);
    taps.push(top);
    n = top + reach;
  }
  return taps;
}
