import { numberText } from '../internal/number-text.js';
import type { RingReading, TapTest } from './types.js';

/** Share of the energy of a ring that one decaying sine may leave over. */
const MOST_LEFT = 0.1;

/** Mean over the taps; its error from their scatter or from their own errors, whichever is larger. */
export function averageRings(readings: readonly RingReading[]): RingReading {
  const of = (
    value: (reading: RingReading) => number,
    error: (reading: RingReading) => number,
  ): [number, number] => {
    const count = readings.length;
    const mean = readings.reduce((sum, reading) => sum + value(reading), 0) / count;
    const scatter = readings.reduce((sum, reading) => sum + (value(reading) - mean) ** 2, 0);
    const own = Math.sqrt(readings.reduce((sum, reading) => sum + error(reading) ** 2, 0)) / count;
    return [mean, count > 1 ? Math.max(own, Math.sqrt(scatter / (count - 1) / count)) : own];
  };
  const [frequency, frequencyError] = of(
    (r) => r.frequency,
    (r) => r.frequencyError,
  );
  const [damping, dampingError] = of(
    (r) => r.damping,
    (r) => r.dampingError,
  );
  return { frequency, frequencyError, damping, dampingError };
}

/** What the taps say together. */
export function concludeTaps(
  byDecrement: RingReading,
  byFit: RingReading,
  {
    channel,
    taps,
    left,
    highest,
  }: { channel: string; taps: readonly number[]; left: number; highest: number },
): TapTest {
  const apart = Math.abs(byDecrement.damping - byFit.damping);
  const joint = Math.hypot(byDecrement.dampingError, byFit.dampingError);
  const agree = left < MOST_LEFT && apart <= Math.max(2 * joint, 0.2 * byFit.damping);
  // The envelope has no frequency of its own: it takes that of the fit.
  const decrement = { ...byDecrement, frequency: byFit.frequency, frequencyError: byFit.frequencyError };
  return {
    ...byFit,
    dampingError: Math.max(byFit.dampingError, agree ? apart / 2 : apart),
    channel,
    byDecrement: decrement,
    byFit,
    agreement: agree ? 'agree' : 'differ',
    taps,
    notes: [
      ...(taps.length < 3 ? ['Fewer than three taps: strike a few times more, a second or two apart.'] : []),
      ...(agree
        ? []
        : [
            `One decaying sine leaves ${numberText(100 * left, 2)} % of the ring over; envelope and fit give ${numberText(100 * byDecrement.damping, 2)} % and ${numberText(100 * byFit.damping, 2)} % of the critical damping: more than one part rings, or the ring rubs.`,
          ]),
      ...(byFit.frequency > 0.9 * highest
        ? ['The ring lies near the top of the range; it may be the image of a higher one.']
        : []),
    ],
  };
}
