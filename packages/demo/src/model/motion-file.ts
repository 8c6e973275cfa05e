/** One reading of a motion sensor. */
export interface MotionSample {
  /** ms, on any clock. */
  readonly time: number;
  /** m/s² */
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/**
 * Readings of a motion sensor as the text that a logger would write.
 *
 * @param name - file name
 * @param motion - the readings in order, and whether the pull of gravity is in them
 */
export function motionFile(name: string, samples: readonly MotionSample[]): File {
  const start = samples[0]?.time ?? 0;
  const rows = samples.map(({ time, x, y, z }) => `${((time - start) / 1000).toFixed(6)},${x},${y},${z}`);
  const text = ['time (s),x (m/s²),y (m/s²),z (m/s²)', ...rows, ''].join('\n');
  return new File([text], name, { type: 'text/csv' });
}

/**
 * The rate of readings, counted.
 *
 * @param samples - in order
 * @returns Hz; undefined where there are too few to count
 */
export function motionRate(samples: readonly Pick<MotionSample, 'time'>[]): number | undefined {
  const [first, last] = [samples[0], samples.at(-1)];
  if (!first || !last || samples.length < 10 || last.time <= first.time) return undefined;
  return (1000 * (samples.length - 1)) / (last.time - first.time);
}
