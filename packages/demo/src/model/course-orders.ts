import { foldedFrequency } from '@sternline/core';
import type { TrialCourse } from './analysis-types.js';

/** An order of shaft speed through the time of a recording. */
export interface CourseOrder {
  readonly order: number;
  /** s */
  readonly time: Float64Array;
  /** Hz */
  readonly frequency: Float64Array;
  /** Hz, where the sampling shows it. */
  readonly apparent: Float64Array;
}

/**
 * Where orders run through a recording: along the speed that was followed, or level where only one speed is known.
 *
 * @param course - of the recording
 * @param steady - orders to mark, the speed in rad/s that it was read for, its stretch in s, and its rate in Hz
 */
export function courseOrders(
  { track }: Pick<TrialCourse, 'track'>,
  steady: {
    readonly orders: readonly number[];
    readonly speed: number;
    readonly from: number;
    readonly to: number;
    readonly sampleRate: number;
  },
): CourseOrder[] {
  const time = track?.time ?? Float64Array.of(steady.from, steady.to);
  const speed = track?.speed ?? Float64Array.of(steady.speed, steady.speed);
  return steady.orders.map((order) => {
    const frequency = speed.map((value) => (order * value) / (2 * Math.PI));
    const apparent = frequency.map((value) => foldedFrequency(value, steady.sampleRate));
    return { order, time, frequency, apparent };
  });
}
