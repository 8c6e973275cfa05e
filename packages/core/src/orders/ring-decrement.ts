import type { RingReading } from './types.js';

/**
 * Damping from the logarithm of an envelope, which falls on a straight line: ln e(t) = ln e₀ − σt.
 *
 * δ = σ T, ζ = δ / √(4π² + δ²), T the period
 *
 * @param envelope - of one ring, from where it may be believed to where noise takes over
 * @param ring - `sampleRate` in Hz, the `frequency` of the ring in Hz, the `noise` amplitude in the envelope, and the samples over
 *   which the envelope's errors hang together
 */
export function ringDecrement(
  envelope: ArrayLike<number>,
  ring: {
    readonly sampleRate: number;
    readonly frequency: number;
    readonly noise: number;
    readonly together: number;
  },
): RingReading {
  const { sampleRate, frequency, noise, together } = ring;
  let [w, wt, wtt, wy, wty] = [0, 0, 0, 0, 0];
  for (let n = 0; n < envelope.length; n++) {
    const size = envelope[n] ?? 0;
    if (!(size > 0)) continue;
    const t = n / sampleRate;
    // An error of the envelope weighs in its logarithm by its share.
    const weight = size * size;
    const y = Math.log(size);
    w += weight;
    wt += weight * t;
    wtt += weight * t * t;
    wy += weight * y;
    wty += weight * t * y;
  }
  const determinant = w * wtt - wt * wt;
  const decay = determinant > 0 ? -(w * wty - wt * wy) / determinant : NaN;
  const variance = determinant > 0 ? (w * noise * noise * Math.max(1, together)) / determinant : NaN;
  const decrement = decay / frequency;
  return {
    frequency,
    frequencyError: NaN,
    damping: decrement / Math.hypot(2 * Math.PI, decrement),
    dampingError: Math.sqrt(variance) / (2 * Math.PI * frequency),
  };
}
