import { refusal } from '../internal/refuse.js';
import { createFourierPlan } from './fourier-plan.js';
import type { FourierPlan } from './fourier-plan.js';
import { checkSegments } from './check-segments.js';
import { loadSegment } from './load-segment.js';
import { segmentStarts } from './segment-starts.js';
import type { Detrend, SegmentOptions } from './types.js';
import { windowSamples } from './window-samples.js';

export interface AverageOptions extends SegmentOptions {
  readonly segmentLength: number;
  /** Of at least the segment's length, zeros fill what it leaves; default of that length. */
  readonly plan?: FourierPlan;
  /** At most so many segments, spread evenly over the samples. Default all. */
  readonly mostSegments?: number;
  /** The public function that asks, for the refusal. */
  readonly caller: string;
}

export interface AveragePower {
  /** Mean of |X(k)|² over the segments, k = 0 … half the transform length. */
  readonly power: Float64Array;
  readonly segments: number;
  /** Mean samples from the start of one segment to the next. */
  readonly step: number;
  /** Samples of the window. */
  readonly window: Float64Array;
  readonly sum: number;
  readonly sumOfSquares: number;
}

/**
 * Averages the power of windowed, overlapping segments.
 *
 * Two real segments a and b share one transform of a + ib: |A(k)|² + |B(k)|² = (|Z(k)|² + |Z(N − k)|²) / 2,
 * and the sum of powers is all that an average needs.
 */
export function averagePower(samples: ArrayLike<number>, options: AverageOptions): AveragePower {
  const {
    segmentLength,
    overlap = 0.5,
    window: name = 'hann',
    detrend = 'constant',
    gaps = [],
    caller,
  } = options;
  checkSegments(samples, options);
  const window = windowSamples(name, segmentLength);
  const step = segmentLength - Math.floor(overlap * segmentLength);
  const all = segmentStarts(samples.length, { segmentLength, step, gaps });
  const starts = spread(all, options.mostSegments ?? Infinity);
  if (starts.length === 0)
    throw refusal(`${caller}: segmentLength`, 'short enough to fit between the gaps', segmentLength);
  const data = samples instanceof Float64Array ? samples : Float64Array.from(samples);
  return {
    power: sumPairs(data, {
      starts,
      window,
      detrend,
      plan: options.plan ?? createFourierPlan(segmentLength),
    }),
    segments: starts.length,
    step: starts.length < all.length ? Math.floor((step * all.length) / starts.length) : step,
    window,
    sum: window.reduce((total, w) => total + w, 0),
    sumOfSquares: window.reduce((total, w) => total + w * w, 0),
  };
}

function spread(starts: readonly number[], most: number): readonly number[] {
  if (starts.length <= most) return starts;
  return Array.from({ length: most }, (_, i) => starts[Math.floor(((i + 0.5) * starts.length) / most)] ?? 0);
}

interface Cut {
  readonly starts: readonly number[];
  readonly window: Float64Array;
  readonly detrend: Detrend;
  readonly plan: FourierPlan;
}

function sumPairs(samples: Float64Array, { starts, window, detrend, plan }: Cut): Float64Array {
  const { length } = plan;
  const data = new Float64Array(2 * length);
  const out = new Float64Array(2 * length);
  const power = new Float64Array(Math.floor(length / 2) + 1);
  for (let i = 0; i < starts.length; i += 2) {
    loadSegment(data, samples, { start: starts[i] ?? 0, window, detrend, part: 0 });
    const second = starts[i + 1];
    if (second !== undefined) loadSegment(data, samples, { start: second, window, detrend, part: 1 });
    else for (let n = 1; n < 2 * window.length; n += 2) data[n] = 0;
    plan.transform(out, data);
    addPower(power, out);
  }
  const scale = 1 / (2 * starts.length);
  for (let k = 0; k < power.length; k++) power[k] = (power[k] ?? 0) * scale;
  return power;
}

function addPower(power: Float64Array, out: Float64Array): void {
  const length = out.length / 2;
  for (let k = 0; k < power.length; k++) {
    const i = 2 * k;
    const j = k === 0 ? 0 : 2 * (length - k);
    const a = out[i] ?? 0;
    const b = out[i + 1] ?? 0;
    const c = out[j] ?? 0;
    const d = out[j + 1] ?? 0;
    power[k] = (power[k] ?? 0) + a * a + b * b + c * c + d * d;
  }
}
