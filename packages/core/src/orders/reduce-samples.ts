import { createInterpolator } from './interpolate-samples.js';

/** Rate over the highest frequency that is kept whole. */
const HEADROOM = 2.5;

export interface ReducedSamples {
  readonly samples: ArrayLike<number>;
  readonly sampleRate: number;
  /** Samples before for each after. */
  readonly factor: number;
}

/**
 * Samples at a lower rate that still show `highest` (Hz) and below as before; the same ones where that spares less than half. What
 * lies above is cut off before, so that nothing folds anew.
 */
export function reduceSamples(
  samples: ArrayLike<number>,
  sampleRate: number,
  highest: number,
): ReducedSamples {
  const factor = Math.floor(sampleRate / (HEADROOM * highest));
  if (!(factor >= 2)) return { samples, sampleRate, factor: 1 };
  const { valueAt } = createInterpolator(1 / factor);
  const length = Math.floor((samples.length - 1) / factor) + 1;
  return {
    samples: Float64Array.from({ length }, (_, n) => valueAt(samples, n * factor)),
    sampleRate: sampleRate / factor,
    factor,
  };
}
