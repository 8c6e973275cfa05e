import { refusal } from './refuse.js';

/** @throws RangeError unless `value` is a finite number; `where` reads `'function: argument'`. */
export function checkFinite(where: string, value: number): void {
  if (!Number.isFinite(value)) throw refusal(where, 'a finite number', value);
}

/** @throws RangeError unless `value` is finite and greater than 0. */
export function checkPositive(where: string, value: number): void {
  if (!(Number.isFinite(value) && value > 0)) throw refusal(where, 'a finite number greater than 0', value);
}

/** @throws RangeError unless `value` is finite and at least 0. */
export function checkNotNegative(where: string, value: number): void {
  if (!(Number.isFinite(value) && value >= 0)) throw refusal(where, 'a finite number of at least 0', value);
}

/** @throws RangeError unless `value` is a whole number in [`least`, `most`]. */
export function checkWhole(where: string, value: number, [least, most]: readonly [number, number]): void {
  if (Number.isInteger(value) && value >= least && value <= most) return;
  const range = Number.isFinite(most) ? `from ${least} to ${most}` : `of at least ${least}`;
  throw refusal(where, `a whole number ${range}`, value);
}
