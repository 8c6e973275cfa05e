import { refusal } from '../internal/refuse.js';
import { checkPositive, checkFinite } from '../internal/checks.js';
import type { SpeedAtTime } from './types.js';

/** A speed that runs straight between points, and the angle that it adds up to. */
export interface ShaftAngle {
  /** rad/s */
  speedAt(time: number): number;
  /** rad turned since time 0. */
  angleAt(time: number): number;
  /** s at which that angle is reached: between points the angle is a quadratic, as through three pulses of a shaft. */
  timeAt(angle: number): number;
  /** Angle and speed at each of `count` samples, from time 0 on. */
  sample(count: number, sampleRate: number): { readonly angles: Float64Array; readonly speeds: Float64Array };
}

/** @throws RangeError for no points, a speed not greater than 0 or times that do not rise; `where` reads `'function: speed'`. */
export function shaftAngle(where: string, points: readonly SpeedAtTime[]): ShaftAngle {
  checkPoints(where, points);
  const times = points.map(({ time }) => time);
  const speeds = points.map(({ speed }) => speed);
  const angles = [0];
  for (let i = 1; i < times.length; i++) {
    const mean = ((speeds[i - 1] ?? 0) + (speeds[i] ?? 0)) / 2;
    angles.push((angles[i - 1] ?? 0) + mean * ((times[i] ?? 0) - (times[i - 1] ?? 0)));
  }
  /** Time, speed, angle and acceleration at the start of the piece in which `values` holds `at`. */
  const piece = (values: readonly number[], at: number): [number, number, number, number] => {
    const i = pieceOf(values, at);
    const [time = 0, speed = 0, angle = 0] = [times[i], speeds[i], angles[i]];
    const span = (times[i + 1] ?? time) - time;
    const outside = at < (values[0] ?? 0) || span === 0;
    return [time, speed, angle, outside ? 0 : ((speeds[i + 1] ?? speed) - speed) / span];
  };
  const turned = (at: number): number => {
    const [time, speed, angle, acceleration] = piece(times, at);
    return angle + (speed + (acceleration * (at - time)) / 2) * (at - time);
  };
  const start = turned(0);
  const sample = (count: number, sampleRate: number) => {
    const table = { angles: new Float64Array(count), speeds: new Float64Array(count) };
    for (let n = 0, end = 0; n < count; n = end) {
      const next = times.find((time) => time > n / sampleRate) ?? Infinity;
      end = Math.min(count, Math.max(n + 1, Math.ceil(next * sampleRate)));
      const [time, speed, angle, acceleration] = piece(times, n / sampleRate);
      for (let m = n; m < end; m++) {
        const since = m / sampleRate - time;
        table.speeds[m] = speed + acceleration * since;
        table.angles[m] = angle + (speed + (acceleration * since) / 2) * since - start;
      }
    }
    return table;
  };
  return {
    sample,
    speedAt: (at) => {
      const [time, speed, , acceleration] = piece(times, at);
      return speed + acceleration * (at - time);
    },
    angleAt: (at) => turned(at) - start,
    timeAt: (at) => {
      const [time, speed, angle, acceleration] = piece(angles, at + start);
      const rest = at + start - angle;
      return time + (2 * rest) / (speed + Math.sqrt(Math.max(0, speed * speed + 2 * acceleration * rest)));
    },
  };
}

function checkPoints(where: string, points: readonly SpeedAtTime[]): void {
  if (points.length === 0) throw refusal(where, 'a list of one point or more', points);
  points.forEach(({ time, speed }, i) => {
    checkPositive(`${where}[${i}].speed`, speed);
    checkFinite(`${where}[${i}].time`, time);
    const before = points[i - 1];
    if (before !== undefined && time <= before.time)
      throw refusal(`${where}[${i}].time`, 'later than the point before', time);
  });
}

/** Index of the last entry that is not above `at`, 0 where all are. */
function pieceOf(values: readonly number[], at: number): number {
  let low = 0;
  let high = values.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((values[middle] ?? 0) <= at) low = middle;
    else high = middle - 1;
  }
  return low;
}
