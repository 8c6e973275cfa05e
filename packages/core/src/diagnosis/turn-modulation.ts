import { measureOrders } from '../orders/measure-orders.js';
import type { Recording } from '../recording/types.js';
import { recordingSpectra } from '../spectrum/recording-spectra.js';

/** How the noise between the lines swells and sinks with the shaft. */
export interface TurnModulation {
  /** Once a turn, over its mean: 0 for steady noise, towards 2 for short bursts. */
  readonly depth: number;
  /** Twice a turn, likewise: small for a slow swell, towards 2 for short bursts. */
  readonly burst: number;
  /** Whether that stands above what chance would show. */
  readonly seen: boolean;
}

/** Not whole, so that the seams themselves do not come round once a turn. */
const TURNS = 15.5;
/** More samples than this tell no more of a swell than they cost. */
const MOST_SAMPLES = 40_000;
/** Recordings of steady noise in which a swell may be seen. */
const FALSE_ALARM_RATE = 0.001;
const ORDERS: readonly number[] = [1, 2, 3, 4, 0.5, 1.5, 2.5, 5, 6, 7, 8, 9, 10];

/**
 * Takes the orders out of a recording, a few turns at a time, and looks for shaft speed in the square of what is left.
 *
 * @see Robert Randall and Jérôme Antoni, "Rolling element bearing diagnostics: a tutorial", Mechanical Systems and Signal
 *   Processing 25, 2011, §4 (squared envelope spectrum of the residual)
 */
export function turnModulation(recording: Recording, speed: number): TurnModulation {
  const { sampleRate, sampling } = recording;
  if (sampling.gaps.length > 0) return { depth: 0, burst: 0, seen: false };
  const perTurn = (2 * Math.PI * sampleRate) / speed;
  // A channel that is cut off where it swings furthest swells once a turn by the cutting.
  const whole = recording.channels.filter(
    ({ name }) => !sampling.clipping.some(({ channel }) => channel === name),
  );
  if (whole.length === 0) return { depth: 0, burst: 0, seen: false };
  const squared = whole.map(({ name, unit, samples }) => {
    const from = Math.max(0, Math.floor((samples.length - MOST_SAMPLES) / 2));
    const rest = withoutOrders(samples.slice(from, from + MOST_SAMPLES), perTurn);
    return { name, unit, samples: rest.map((x) => x * x) };
  });
  const swell: Recording = { ...recording, channels: squared };
  const [once, twice] = measureOrders({
    recording: swell,
    spectra: recordingSpectra(swell, { padding: 4, caller: 'diagnose' }),
    speed,
    orders: [1, 2],
    tolerance: 0,
    falseAlarmRate: FALSE_ALARM_RATE,
  }).orders;
  const means = squared.map(({ samples }) => meanOf(samples));
  const deepest = (order: typeof once): number =>
    Math.max(
      0,
      ...(order?.channels ?? []).map(({ amplitude, seen }, i) => (seen ? amplitude / (means[i] ?? 1) : 0)),
    );
  const depth = deepest(once);
  return { depth, burst: deepest(twice), seen: depth > 0 };
}

/** Each stretch of turns less its mean and the sines of its orders, one after the other. */
function withoutOrders(samples: Float64Array, perTurn: number): Float64Array {
  const length = Math.max(8, Math.round(TURNS * perTurn));
  for (let start = 0; start < samples.length; start += length) {
    const piece = samples.subarray(start, start + length);
    const mean = meanOf(piece);
    for (let n = 0; n < piece.length; n++) piece[n] = (piece[n] ?? 0) - mean;
    for (const order of ORDERS) removeSine(piece, (2 * Math.PI * order) / perTurn);
  }
  return samples;
}

/** The sine by rotation, which is quicker than a cosine for each sample and holds 12 digits over a piece. */
function removeSine(piece: Float64Array, step: number): void {
  // A sine at half the rate or at 0 would be fitted twice over.
  if (Math.abs(Math.sin(step)) < 0.02) return;
  const [turnCosine, turnSine] = [Math.cos(step), Math.sin(step)];
  const scale = 2 / piece.length;
  let [cosine, sine, c, s] = [0, 0, 1, 0];
  for (const x of piece) {
    cosine += x * c;
    sine += x * s;
    const next = c * turnCosine - s * turnSine;
    s = s * turnCosine + c * turnSine;
    c = next;
  }
  c = 1;
  s = 0;
  for (let n = 0; n < piece.length; n++) {
    piece[n] = (piece[n] ?? 0) - scale * (cosine * c + sine * s);
    const next = c * turnCosine - s * turnSine;
    s = s * turnCosine + c * turnSine;
    c = next;
  }
}

function meanOf(values: Float64Array): number {
  return values.reduce((sum, x) => sum + x, 0) / values.length;
}
