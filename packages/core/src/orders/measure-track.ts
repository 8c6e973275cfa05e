import { refusal } from '../internal/refuse.js';
import type { Recording } from '../recording/types.js';
import { magnitudeError } from '../spectrum/magnitude-error.js';
import { foldedFrequency } from './folded-frequency.js';
import { orderPhasors } from './order-phasors.js';
import type { Phasors } from './order-phasors.js';
import { shaftAngle } from './shaft-angle.js';
import type { ShaftAngle } from './shaft-angle.js';
import type { OrderTrack, SpeedAtTime, TrackedChannel, TrackedOrder, TrackOptions } from './types.js';

const TURN = 2 * Math.PI;

/** Windows through a recording at least, so that a resonance passed in a fifth of it still shows its height. */
const WINDOWS = 40;
const MOST_TIMES = 400;

export interface Measuring {
  readonly options: TrackOptions;
  readonly points: readonly SpeedAtTime[];
  readonly confidence: number;
}

/** Orders along a speed that is known, or was followed with that confidence. */
export function measureTrack(recording: Recording, { options, points, confidence }: Measuring): OrderTrack {
  const { channels, sampleRate, sampling } = recording;
  const { orders } = options;
  const shaft = shaftAngle('trackOrders: speed', points);
  const duration = (channels[0]?.samples.length ?? 0) / sampleRate;
  const least = 8 / spacingOf(orders);
  if (!(shaft.angleAt(duration) > TURN * least))
    throw refusal(
      'trackOrders: recording',
      `${least} turns long or more`,
      Number((shaft.angleAt(duration) / TURN).toFixed(1)),
    );
  const turnsAt = (time: number): number =>
    Math.max(least, (shaft.speedAt(time) / TURN) * (duration / WINDOWS));
  const times = timesOf(shaft, duration, turnsAt);
  const phasors = channels.map(({ samples }) =>
    orderPhasors(samples, { sampleRate, shaft, times, turnsAt, orders, gaps: sampling.gaps }),
  );
  return {
    time: times,
    speed: times.map((time) => shaft.speedAt(time)),
    speedFrom: options.speed === undefined ? 'recording' : 'given',
    confidence,
    orders: orders.map((order, at): TrackedOrder => {
      const read = channels.map(({ name, unit }, i) => ({
        channel: name,
        unit,
        ...amplitudesOf(phasors[i]?.[at]),
      }));
      const most = read.reduce((a, b) => (sumOf(b) > sumOf(a) ? b : a));
      const hidden = hiddenAt(times, { order, orders, shaft, turnsAt, sampleRate });
      return { order, ...most, hidden, channels: read };
    }),
  };
}

/** Order apart from the nearest other order asked for, or whole one. */
function spacingOf(orders: readonly number[]): number {
  const apart = orders.flatMap((order) => [
    order,
    order % 1,
    1 - (order % 1),
    ...orders.map((other) => Math.abs(order - other)),
  ]);
  return Math.max(0.05, Math.min(1, ...apart.filter((distance) => distance > 1e-9)));
}

/** A quarter of a window apart, whole windows inside the recording. */
function timesOf(shaft: ShaftAngle, duration: number, turnsAt: (time: number) => number): Float64Array {
  const times: number[] = [];
  const half = (time: number): number => (Math.PI * turnsAt(time)) / shaft.speedAt(time);
  const last = shaft.timeAt(shaft.angleAt(duration) - Math.PI * turnsAt(duration));
  for (let time = half(0); time <= last; time += Math.max(half(time) / 2, duration / MOST_TIMES)) {
    if (shaft.angleAt(time) >= Math.PI * turnsAt(time)) times.push(time);
  }
  return Float64Array.from(times.length > 0 ? times : [duration / 2]);
}

function amplitudesOf(phasors: Phasors | undefined): Pick<TrackedChannel, 'amplitude' | 'amplitudeError'> {
  const { real, imaginary, noise } = phasors ?? { real: [], imaginary: [], noise: [] };
  const amplitude = Float64Array.from(real, (x, i) =>
    Math.sqrt(Math.max(0, x * x + (imaginary[i] ?? 0) ** 2 - (noise[i] ?? 0))),
  );
  return {
    amplitude,
    // Of the mean square A²/2, whose noise is half of that of A².
    amplitudeError: amplitude.map(
      (value, i) =>
        Math.SQRT2 * magnitudeError(value / Math.SQRT2, { noise: (noise[i] ?? 0) / 2, averages: 1 }),
    ),
  };
}

function sumOf({ amplitude }: { readonly amplitude: Float64Array }): number {
  return amplitude.reduce((sum, value) => sum + value, 0);
}

interface Place {
  readonly order: number;
  readonly orders: readonly number[];
  readonly shaft: ShaftAngle;
  readonly turnsAt: (time: number) => number;
  readonly sampleRate: number;
}

function hiddenAt(times: Float64Array, { order, orders, shaft, turnsAt, sampleRate }: Place): Uint8Array {
  return Uint8Array.from(times, (time) => {
    const frequency = shaft.speedAt(time) / TURN;
    // The main lobes of the two windows side by side: four lines.
    const width = (4 * frequency) / turnsAt(time);
    const apparent = foldedFrequency(order * frequency, sampleRate);
    const others = orders.filter((other) => other !== order);
    const crossed = others.some(
      (other) => Math.abs(foldedFrequency(other * frequency, sampleRate) - apparent) < width,
    );
    return crossed || apparent < width || apparent > sampleRate / 2 - width ? 1 : 0;
  });
}
