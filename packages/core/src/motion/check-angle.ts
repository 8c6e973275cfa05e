import { refusal } from '../internal/refuse.js';

/** @throws RangeError unless the angle at `index` is a finite number, which it gives back. */
export function checkAngle(where: string, angles: ArrayLike<number>, index: number): number {
  const angle = angles[index];
  if (angle === undefined || !Number.isFinite(angle))
    throw refusal(`${where}: inputAngles[${index}]`, 'a finite angle in rad', angle);
  return angle;
}
