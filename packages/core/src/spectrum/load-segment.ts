import type { Detrend } from './types.js';

/** Writes one segment, its trend taken out and windowed, as the real (part 0) or imaginary (part 1) half of `data`. */
export function loadSegment(
  data: Float64Array,
  samples: Float64Array,
  { start, window, detrend, part }: { start: number; window: Float64Array; detrend: Detrend; part: 0 | 1 },
): void {
  const length = window.length;
  const middle = (length - 1) / 2;
  let sum = 0;
  let moment = 0;
  if (detrend === 'constant') {
    for (let n = 0; n < length; n++) sum += samples[start + n] ?? 0;
  } else if (detrend === 'linear') {
    for (let n = 0; n < length; n++) {
      const x = samples[start + n] ?? 0;
      sum += x;
      moment += (n - middle) * x;
    }
  }
  const mean = sum / length;
  // Σ (n − middle)² = N (N² − 1) / 12
  const slope = (12 * moment) / (length * (length * length - 1));
  for (let n = 0; n < length; n++) {
    data[2 * n + part] = ((samples[start + n] ?? 0) - mean - slope * (n - middle)) * (window[n] ?? 0);
  }
}
