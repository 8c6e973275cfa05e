import { checkWhole } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import { checkFiniteSamples } from './check-finite-samples.js';
import type { Detrend, SegmentOptions } from './types.js';
import { windowCoefficients } from './window-coefficients.js';

/** @throws RangeError for anything about samples and their cutting that is out of its domain; `caller` is the public function. */
export function checkSegments(
  samples: ArrayLike<number>,
  options: SegmentOptions & { readonly segmentLength: number; readonly caller: string },
): void {
  const { segmentLength, overlap = 0.5, window: name = 'hann', detrend = 'constant', caller } = options;
  checkWhole(`${caller}: segmentLength`, segmentLength, [2, Math.max(2, samples.length)]);
  if (samples.length < 2) throw refusal(`${caller}: samples`, 'at least 2 long', samples.length);
  if (!(overlap >= 0 && overlap < 1)) throw refusal(`${caller}: overlap`, 'at least 0 and below 1', overlap);
  if (!DETRENDS.includes(detrend))
    throw refusal(`${caller}: detrend`, `one of ${DETRENDS.join(', ')}`, detrend);
  windowCoefficients(`${caller}: window`, name);
  checkFiniteSamples(`${caller}: samples`, samples);
}

const DETRENDS: readonly Detrend[] = ['none', 'constant', 'linear'];
