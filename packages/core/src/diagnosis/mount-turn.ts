import type { Recording } from '../recording/types.js';

/** m/s² between which a mean of three axes is taken for gravity. */
const GRAVITY: readonly [number, number] = [8.5, 11];

/** rad between the directions in which gravity pulls on the phone; NaN where either recording does not hold it. */
export function mountTurn(before: Recording, after: Recording): number {
  const [a, b] = [gravityOf(before), gravityOf(after)];
  if (a === undefined || b === undefined) return NaN;
  const dot = a.reduce((sum, x, i) => sum + x * (b[i] ?? 0), 0);
  return Math.acos(Math.max(-1, Math.min(1, dot / (Math.hypot(...a) * Math.hypot(...b)))));
}

function gravityOf({ channels, sampling }: Recording): number[] | undefined {
  const axes = channels.filter(({ unit }) => unit === 'm/s²');
  if (axes.length !== 3 || sampling.gravity === 'removed') return undefined;
  const means = axes.map(({ samples }) => samples.reduce((sum, x) => sum + x, 0) / samples.length);
  const size = Math.hypot(...means);
  return size >= GRAVITY[0] && size <= GRAVITY[1] ? means : undefined;
}
