import { checkNotNegative } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import { type LeastSquaresInput, type LeastSquaresOptions, type LeastSquaresSpectrum } from './types.js';

/**
 * Amplitudes of samples taken at uneven times: at each frequency a sine, a cosine and a level fitted by least squares.
 *
 * x(t) ≈ c + a cos 2πft + b sin 2πft; amplitude √(a² + b²); share of the variance that the fit explains
 *
 * @param input - `times` in s, in any order, and as many `samples` in any unit
 * @param options - `frequencies`, Hz, greater than 0
 * @returns for each frequency the peak amplitude in the samples' unit, its phase in rad (of a cosine, at time 0), and the
 *   share of the variance, 0 to 1
 * @throws RangeError for lists of different lengths, fewer than 4 samples, values that are not finite, or a negative frequency
 * @remarks Each frequency is fitted alone, so strong lines spill into their neighbours as far as the pattern of the
 *   times spreads them. Uneven times do not fold at half the mean rate, which is what it is for: frequencies up to the
 *   inverse of the finest spacing may be asked. Cost grows with samples times frequencies. Where the times cannot tell a
 *   frequency from a level, its amplitude is NaN.
 * @example
 * const times = Float64Array.from({ length: 200 }, (_, i) => 0.01 * i + 0.004 * Math.sin(i * i));
 * const samples = times.map((t) => 9.81 + 0.5 * Math.cos(2 * Math.PI * 70 * t));
 * const spectrum = leastSquaresSpectrum({ times, samples }, { frequencies: [30, 70] });
 * spectrum.amplitude[1] // → 0.50000
 * spectrum.share[1] // → 1.000
 * @see M. Zechmeister and M. Kürster, "The generalised Lomb-Scargle periodogram", Astronomy & Astrophysics 496, 2009
 */
export function leastSquaresSpectrum(
  { times, samples }: LeastSquaresInput,
  { frequencies }: LeastSquaresOptions,
): LeastSquaresSpectrum {
  check(times, samples);
  const { centred, mean } = centre(samples);
  const start = times[0] ?? 0;
  const clock = Float64Array.from(times, (time) => time - start);
  const variance = centred.reduce((sum, value) => sum + value * value, 0);
  const amplitude = new Float64Array(frequencies.length);
  const phase = new Float64Array(frequencies.length);
  const share = new Float64Array(frequencies.length);
  for (let k = 0; k < frequencies.length; k++) {
    const frequency = frequencies[k] ?? NaN;
    checkNotNegative(`leastSquaresSpectrum: frequencies[${k}]`, frequency);
    const fit = fitAt(2 * Math.PI * frequency, { clock, centred });
    amplitude[k] = Math.hypot(fit.cosine, fit.sine);
    // Back from the first stamp to time 0.
    phase[k] = wrap(Math.atan2(-fit.sine, fit.cosine) - 2 * Math.PI * frequency * start);
    share[k] = variance > 0 ? fit.explained / variance : 0;
  }
  return { frequency: Float64Array.from(frequencies), amplitude, phase, share, mean };
}

function check(times: ArrayLike<number>, samples: ArrayLike<number>): void {
  const n = times.length;
  if (n < 4) throw refusal('leastSquaresSpectrum: times', 'at least 4 times', Array.from(times));
  if (samples.length !== n)
    throw refusal('leastSquaresSpectrum: samples', `as many as there are times, ${n}`, samples.length);
  for (let i = 0; i < n; i++) {
    if (!Number.isFinite(times[i]))
      throw refusal(`leastSquaresSpectrum: times[${i}]`, 'a finite number', times[i]);
    if (!Number.isFinite(samples[i]))
      throw refusal(`leastSquaresSpectrum: samples[${i}]`, 'a finite number', samples[i]);
  }
}

function centre(samples: ArrayLike<number>): { centred: Float64Array; mean: number } {
  const given = Float64Array.from(samples);
  const mean = given.reduce((sum, value) => sum + value, 0) / given.length;
  return { centred: given.map((value) => value - mean), mean };
}

interface Fit {
  readonly cosine: number;
  readonly sine: number;
  /** Sum of squares that the fit takes away. */
  readonly explained: number;
}

/** Normal equations of level, cosine and sine, the level eliminated since the samples are centred. */
function fitAt(pulsation: number, { clock, centred }: { clock: Float64Array; centred: Float64Array }): Fit {
  const n = clock.length;
  let [c, s, cc, cs, xc, xs] = [0, 0, 0, 0, 0, 0];
  for (let i = 0; i < n; i++) {
    const angle = pulsation * (clock[i] ?? 0);
    const cosine = Math.cos(angle);
    const sine = Math.sin(angle);
    const value = centred[i] ?? 0;
    c += cosine;
    s += sine;
    cc += cosine * cosine;
    cs += cosine * sine;
    xc += value * cosine;
    xs += value * sine;
  }
  const varianceC = cc - (c * c) / n;
  const varianceS = n - cc - (s * s) / n;
  const covariance = cs - (c * s) / n;
  const determinant = varianceC * varianceS - covariance * covariance;
  if (!(determinant > 1e-12 * n * n)) return { cosine: NaN, sine: NaN, explained: NaN };
  const cosine = (xc * varianceS - xs * covariance) / determinant;
  const sine = (xs * varianceC - xc * covariance) / determinant;
  return { cosine, sine, explained: cosine * xc + sine * xs };
}

/** To (−π, π]. */
function wrap(angle: number): number {
  return angle - 2 * Math.PI * Math.ceil((angle - Math.PI) / (2 * Math.PI));
}
