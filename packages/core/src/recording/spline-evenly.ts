import { evenLength, type Uneven } from './resample-evenly.js';

/**
 * Brings irregular samples to an even base by the natural cubic spline through them.
 *
 * @param samples - one for each time
 * @param target - strictly ascending times of the samples and the period wanted
 * @returns samples every `period`
 * @remarks A cubic spline keeps amplitudes within 2 % up to a quarter of the rate for even samples, and to that
 *   share of the rate at the widest spacing for uneven ones; above it they fade, and nothing is to be read there.
 * @see Carl de Boor, A Practical Guide to Splines, Springer 1978, chapter IV
 */
export function splineEvenly(samples: Float64Array, { times, period }: Uneven): Float64Array {
  const curvature = secondDerivatives(samples, times);
  const length = evenLength({ times, period });
  const result = new Float64Array(length);
  let k = 0;
  for (let j = 0; j < length; j++) {
    const time = (times[0] ?? 0) + j * period;
    while (k + 2 < times.length && (times[k + 1] ?? Infinity) <= time) k++;
    const span = (times[k + 1] ?? 0) - (times[k] ?? 0);
    const b = (time - (times[k] ?? 0)) / span;
    const a = 1 - b;
    const bend =
      ((a ** 3 - a) * (curvature[k] ?? 0) + (b ** 3 - b) * (curvature[k + 1] ?? 0)) * (span ** 2 / 6);
    result[j] = a * (samples[k] ?? 0) + b * (samples[k + 1] ?? 0) + bend;
  }
  return result;
}

/** Thomas' elimination of the spline's three-banded equations, with no bending at the ends. */
function secondDerivatives(samples: Float64Array, times: Float64Array): Float64Array {
  const n = samples.length;
  const spans = steps(times);
  const slopes = steps(samples).map((rise, i) => rise / (spans[i] ?? 1));
  const upper = new Float64Array(n);
  const result = new Float64Array(n);
  for (let i = 1; i < n - 1; i++) {
    const left = spans[i - 1] ?? 0;
    const right = spans[i] ?? 0;
    const pivot = 2 * (left + right) - left * (upper[i - 1] ?? 0);
    upper[i] = right / pivot;
    result[i] = (6 * ((slopes[i] ?? 0) - (slopes[i - 1] ?? 0)) - left * (result[i - 1] ?? 0)) / pivot;
  }
  for (let i = n - 2; i > 0; i--) result[i] = (result[i] ?? 0) - (upper[i] ?? 0) * (result[i + 1] ?? 0);
  return result;
}

function steps(values: Float64Array): Float64Array {
  return values.subarray(1).map((value, i) => value - (values[i] ?? 0));
}
