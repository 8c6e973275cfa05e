import { refusal } from '../internal/refuse.js';
import type { Channel, Recording } from '../recording/types.js';
import { bandEnvelope } from '../spectrum/band-envelope.js';
import { bandLimit } from '../spectrum/band-limit.js';
import { segmentPowers } from '../spectrum/segment-powers.js';
import { fitDecayingSine } from './decaying-sine.js';
import type { RingFit } from './decaying-sine.js';
import { averageRings, concludeTaps } from './conclude-taps.js';
import { findTaps } from './find-taps.js';
import { ringDecrement } from './ring-decrement.js';
import type { RingReading, TapOptions, TapTest } from './types.js';

/** Half the band about the ring, as a share of its frequency. */
const HALF_BAND = 0.3;
/** Periods after the blow that are left out: the blow itself, and the settling of the band. */
const SKIPPED = 1.5;
/** Times the noise down to which the ring is read. */
const ABOVE_NOISE = 3;
const FEWEST_PERIODS = 3;

/**
 * Natural frequency and damping of a part that was tapped, from its ringing: by the logarithmic decrement of the envelope, and by
 * least squares of a decaying sine, over all taps.
 *
 * x(t) = A e^(−ζ ω₀ t) cos(ω₀ √(1 − ζ²) t + φ)
 *
 * @param recording - taps a second or so apart, the drive still; the channel that rings most is read
 * @param options - `range` in Hz in which to look for the ring
 * @returns frequency in Hz and damping as a share of the critical, each with its standard error, by both methods and as their mean
 *   weighed by errors, and whether the two agree
 * @throws RangeError for a range that does not rise within half the rate, no channel, or a recording in which no tap rings for
 *   three periods above the noise
 * @remarks For one part ringing at a time: two natural frequencies within a third of each other beat, and then the two methods
 *   differ. A ring above half the rate shows folded and is not told. A hand on the model damps it; a phone on a light part lowers
 *   its frequency.
 * @example
 * ```ts
 * let state = 1;
 * const noise = () => (state = (16807 * state) % 2147483647) / 2147483647 - 0.5;
 * const samples = Float64Array.from({ length: 2400 }, (_, n) => {
 *   const t = (n % 800) / 400 - 0.25;
 *   return 0.02 * noise() + (t < 0 ? 0 : 5 * Math.exp(-0.02 * 2 * Math.PI * 40 * t) * Math.sin(2 * Math.PI * 40 * t));
 * });
 * const recording = { name: 'taps', sampleRate: 400, channels: [{ name: 'z', unit: 'm/s²', samples }],
 *   sampling: { kind: 'motion', gaps: [] } };
 * const { frequency, damping, agreement } = tapTest(recording);
 * frequency // → 40.0 Hz
 * damping // → 0.020
 * agreement // → 'agree'
 * ```
 * @see Thomson, Theory of Vibration with Applications, section 2.8 (logarithmic decrement)
 */
export function tapTest(recording: Recording, options: TapOptions = {}): TapTest {
  const { sampleRate, channels } = recording;
  const [lowest, highest] = checkRange(options.range ?? [5, 0.45 * sampleRate], sampleRate);
  const rings = channels.map((channel) => limited(channel, sampleRate, [lowest, highest]));
  const [most] = rings.sort((a, b) => b.peak - a.peak);
  if (most === undefined) throw refusal('tapTest: recording', 'one with a channel or more', 'none');
  const struck = findTaps(most.samples, sampleRate);
  const pieces = struck.map((start, i) => ({ start, end: struck[i + 1] ?? most.samples.length }));
  const frequency = ringFrequency(most.samples, { pieces, sampleRate, lowest, highest });
  const readings = readTaps(most.samples, { pieces, sampleRate, frequency, highest });
  if (readings.length === 0)
    throw refusal(
      'tapTest: recording',
      'one with a tap that rings for three periods above the noise',
      'none',
    );
  const byDecrement = averageRings(readings.map(({ decrement }) => decrement));
  const byFit = averageRings(readings.map(({ fit }) => fit));
  const taps = readings.map(({ time }) => time);
  const left = readings.reduce((sum, { fit }) => sum + fit.left, 0) / readings.length;
  return concludeTaps(byDecrement, byFit, { channel: most.channel.name, taps, left, highest });
}

function checkRange([from, to]: readonly [number, number], sampleRate: number): [number, number] {
  if (from > 0 && to > from && to <= sampleRate / 2) return [from, to];
  throw refusal(
    'tapTest: range',
    'two rising frequencies above 0 up to half the sampling rate',
    `${from} and ${to}`,
  );
}

interface Limited {
  readonly channel: Channel;
  readonly samples: Float64Array;
  readonly peak: number;
}

function limited(channel: Channel, sampleRate: number, [from, to]: readonly [number, number]): Limited {
  const samples = bandLimit(channel.samples, sampleRate, { from, to });
  return { channel, samples, peak: samples.reduce((most, x) => Math.max(most, Math.abs(x)), 0) };
}

interface Ringing {
  readonly pieces: readonly { readonly start: number; readonly end: number }[];
  readonly sampleRate: number;
  readonly highest: number;
}

/** Hz, the highest line of the averaged power after the blows. */
function ringFrequency(samples: Float64Array, ringing: Ringing & { readonly lowest: number }): number {
  const { pieces, sampleRate, lowest, highest } = ringing;
  const longest = Math.min(...pieces.map(({ start, end }) => end - start), 2 * sampleRate);
  const segment = Math.max(16, Math.floor(longest));
  const length = 2 ** Math.ceil(Math.log2(8 * segment));
  const starts = pieces.map(({ start }) => start).filter((start) => start + segment <= samples.length);
  const window = new Float64Array(segment).fill(1);
  const powers = segmentPowers(samples, { starts, window, detrend: 'constant', length });
  let [best, most] = [NaN, 0];
  for (let k = 1; k <= length / 2; k++) {
    const frequency = (k * sampleRate) / length;
    const power = powers.reduce((sum, at) => sum + (at[k] ?? 0), 0);
    if (frequency >= lowest && frequency <= highest && power > most) [best, most] = [frequency, power];
  }
  return best;
}

interface TapReading {
  readonly time: number;
  readonly decrement: RingReading;
  readonly fit: RingFit;
}

function readTaps(samples: Float64Array, ringing: Ringing & { readonly frequency: number }): TapReading[] {
  const { pieces, sampleRate, frequency, highest } = ringing;
  if (!(frequency > 0)) return [];
  const band = {
    from: (1 - HALF_BAND) * frequency,
    to: Math.max(1.01 * frequency, Math.min((1 + HALF_BAND) * frequency, highest)),
  };
  const envelope = bandEnvelope(samples, sampleRate, band);
  const ring = bandLimit(samples, sampleRate, band);
  const noise = quietest(envelope);
  const skip = Math.ceil((SKIPPED * sampleRate) / frequency);
  return pieces.flatMap(({ start, end }) => {
    const from = start + skip;
    const to = ringEnd(envelope, { from, end: end - skip, least: ABOVE_NOISE * noise, dip: 2 * skip });
    if (to - from < (FEWEST_PERIODS * sampleRate) / frequency) return [];
    const together = sampleRate / (2 * HALF_BAND * frequency);
    const decrement = ringDecrement(envelope.subarray(from, to), { sampleRate, frequency, noise, together });
    const guess = {
      turning: 2 * Math.PI * frequency,
      decay: Math.max(0, decrement.damping) * 2 * Math.PI * frequency,
    };
    const fit = fitDecayingSine(ring.subarray(from, to), sampleRate, guess);
    // Noise in a band hangs together, so that there is less of it to go by than there are samples.
    const share = Math.sqrt(Math.max(1, sampleRate / (2 * (band.to - band.from))));
    return [
      {
        time: start / sampleRate,
        decrement,
        fit: { ...fit, frequencyError: share * fit.frequencyError, dampingError: share * fit.dampingError },
      },
    ];
  });
}

/** One past the last sample above `least`; a dip shorter than `dip`, as two rings that beat make, does not end it. */
function ringEnd(
  envelope: Float64Array,
  { from, end, least, dip }: { from: number; end: number; least: number; dip: number },
): number {
  let last = from;
  for (let n = from; n < end && n - last <= dip; n++) if ((envelope[n] ?? 0) > least) last = n + 1;
  return last;
}

/** What the envelope is where nothing rings: its lowest tenth, which for noise is 0.46 of the root mean square of the quadratures. */
function quietest(envelope: Float64Array): number {
  const sorted = Float64Array.from(envelope).sort();
  return (sorted[Math.floor(sorted.length / 10)] ?? 0) / 0.46;
}
