import { createFourierPlan } from './fourier-plan.js';
import { loadSegment } from './load-segment.js';
import type { Detrend } from './types.js';

export interface SegmentCut {
  readonly starts: readonly number[];
  readonly window: Float64Array;
  readonly detrend: Detrend;
  /** Of the transform, at least the window's; default the window's. */
  readonly length?: number;
}

/**
 * |X(k)|², k = 0 … N/2, of each segment on its own. Two real segments a and b share one transform Z of a + ib:
 * A(k) = (Z(k) + Z*(N − k)) / 2, B(k) = (Z(k) − Z*(N − k)) / 2i.
 */
export function segmentPowers(
  samples: ArrayLike<number>,
  { starts, window, detrend, length = window.length }: SegmentCut,
): Float64Array[] {
  const plan = createFourierPlan(length);
  const signal = samples instanceof Float64Array ? samples : Float64Array.from(samples);
  const data = new Float64Array(2 * length);
  const out = new Float64Array(2 * length);
  const powers: Float64Array[] = [];
  for (let i = 0; i < starts.length; i += 2) {
    data.fill(0);
    loadSegment(data, signal, { start: starts[i] ?? 0, window, detrend, part: 0 });
    const second = starts[i + 1];
    if (second !== undefined) loadSegment(data, signal, { start: second, window, detrend, part: 1 });
    plan.transform(out, data);
    powers.push(partPower(out, 1));
    if (second !== undefined) powers.push(partPower(out, -1));
  }
  return powers;
}

/** Power of the segment in the real part (sign 1) or in the imaginary part (sign −1). */
function partPower(out: Float64Array, sign: 1 | -1): Float64Array {
  const length = out.length / 2;
  const power = new Float64Array(Math.floor(length / 2) + 1);
  for (let k = 0; k < power.length; k++) {
    const mirror = (length - k) % length;
    const real = (out[2 * k] ?? 0) + sign * (out[2 * mirror] ?? 0);
    const imaginary = (out[2 * k + 1] ?? 0) - sign * (out[2 * mirror + 1] ?? 0);
    power[k] = (real * real + imaginary * imaginary) / 4;
  }
  return power;
}
