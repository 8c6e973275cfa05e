import { refusal } from '../internal/refuse.js';
import type { SpeedPoint } from './types.js';

/** A speed over time, with the shaft angle it adds up to. */
export interface SpeedProfile {
  /** rad/s at a time in s. */
  readonly speedAt: (time: number) => number;
  /** rad turned since time 0. */
  readonly angleAt: (time: number) => number;
}

/** A profile that is level, or straight between points and level outside them. */
export function speedProfile(speed: number | readonly SpeedPoint[]): SpeedProfile {
  if (typeof speed === 'number') {
    checkSpeed(speed);
    return { speedAt: () => speed, angleAt: (time) => speed * time };
  }
  checkPoints(speed);
  const angles = cumulativeAngles(speed);
  return {
    speedAt: (time) => speedBetween(speed, time),
    angleAt: (time) => {
      const i = segmentOf(speed, time);
      const start = speed[i];
      if (!start) return 0;
      return (angles[i] ?? 0) + ((start.speed + speedBetween(speed, time)) / 2) * (time - start.time);
    },
  };
}

function checkSpeed(speed: number): void {
  if (!(Number.isFinite(speed) && speed >= 0)) {
    throw refusal('simulateTrial: speed', 'a finite number of at least 0', speed);
  }
}

function checkPoints(points: readonly SpeedPoint[]): void {
  if (points.length === 0) throw refusal('simulateTrial: speed', 'a number or a list of points', points);
  points.forEach((point, i) => {
    checkSpeed(point.speed);
    const before = points[i - 1];
    if (before && !(point.time > before.time)) {
      throw refusal(`simulateTrial: speed[${i}].time`, 'later than the point before', point.time);
    }
  });
}

function segmentOf(points: readonly SpeedPoint[], time: number): number {
  let low = 0;
  let high = points.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((points[middle]?.time ?? 0) <= time) low = middle;
    else high = middle - 1;
  }
  return low;
}

function speedBetween(points: readonly SpeedPoint[], time: number): number {
  const i = segmentOf(points, time);
  const start = points[i];
  const end = points[i + 1];
  if (!start) return 0;
  if (!end || time <= start.time) return start.speed;
  return start.speed + ((end.speed - start.speed) * (time - start.time)) / (end.time - start.time);
}

function cumulativeAngles(points: readonly SpeedPoint[]): number[] {
  let sum = 0;
  return points.map((point, i) => {
    const before = points[i - 1];
    if (before) sum += ((before.speed + point.speed) / 2) * (point.time - before.time);
    return sum;
  });
}
