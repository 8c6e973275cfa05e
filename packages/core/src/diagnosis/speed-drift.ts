import { orderAmplitudes } from '../orders/order-amplitudes.js';
import { sliceRecording } from '../orders/slice-recording.js';
import type { ComparedSide } from './compared-side.js';

/** s; halves shorter than this place the speed too loosely to be compared. */
const SHORTEST_HALF = 4;

/** Share by which the speed of the second half differs from that of the first; 0 where either does not show it. */
export function speedDrift({ recording, measured }: ComparedSide): number {
  const duration = (recording.channels[0]?.samples.length ?? 0) / recording.sampleRate;
  if (measured.speedFrom === 'given' || duration < 2 * SHORTEST_HALF) return 0;
  const orders = measured.orders.map(({ order }) => order);
  const halves = [0, duration / 2].map((from) =>
    orderAmplitudes({
      recording: sliceRecording(recording, { from, to: from + duration / 2 }),
      speed: measured.speed,
      orders,
    }),
  );
  if (halves.some(({ speedFrom }) => speedFrom === 'given')) return 0;
  const [first, second] = halves.map(({ speed }) => speed);
  return Math.abs(Math.log((second ?? 1) / (first ?? 1)));
}
