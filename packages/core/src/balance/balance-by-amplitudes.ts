import { checkPositive } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import { fUpperQuantile } from '../numerics/f-upper-quantile.js';
import { amplitudeWarnings } from './amplitude-warnings.js';
import { checkRuns } from './check-runs.js';
import { correctionError } from './correction-error.js';
import { fitCircles, type CircleFit } from './fit-circles.js';
import { onCircle } from './on-circle.js';
import { spreadOfPlaces } from './spread-of-places.js';
import type { AmplitudeBalance, AmplitudeBalanceInput } from './types.js';

/** What lies outside one standard deviation of a normal error, both sides. */
const OUTSIDE_ONE_SIGMA = 0.3173;
/** Below this the places of the trial masses say nothing across one line. */
const ON_ONE_LINE = 1e-6;

/**
 * Single-plane balancing without phase: one run as found, and three or more with a trial mass at known places.
 *
 * A₀ = |a|, Aᵢ = |a + s mᵢ e^{jφᵢ}|; the initial response a and the sensitivity s are fitted to all amplitudes by least
 * squares, and the correction is −a / s
 *
 * @param input - `initial` amplitude greater than 0 and `trials`, each with `mass` in kg, `angle` in rad and `amplitude`;
 *   `radius` in m and `amplitudeError` if known
 * @returns where to put how much, with standard errors; `residual` tells how badly the circles miss a common point
 * @throws RangeError for fewer than three trials, places all on one line through the shaft, amplitudes that no trial mass
 *   changes, or a value out of its domain
 * @remarks Holds where the amplitude follows the unbalance in proportion: same speed, clear of a resonance, nothing
 *   loose. Take each trial mass off before the next run. A bend or a hub off centre is balanced at this speed only.
 * @example
 * const degrees = Math.PI / 180;
 * const found = balanceByAmplitudes({
 *   initial: 8,
 *   trials: [
 *     { mass: 0.01, angle: 0, amplitude: 3.718143 },
 *     { mass: 0.01, angle: 120 * degrees, amplitude: 10.143562 },
 *     { mass: 0.01, angle: 240 * degrees, amplitude: 12.259019 },
 *   ],
 * });
 * found.mass // → 0.0160
 * found.angle / degrees // → 20.00
 * found.warnings // → []
 * @see http://reliabilityweb.com/index.php/articles/balancing_without_phase/ for the four-run method drawn with circles;
 *   the least squares over all four amplitudes is derived
 */
export function balanceByAmplitudes(input: AmplitudeBalanceInput): AmplitudeBalance {
  const { initial, trials, radius, amplitudeError } = input;
  checkPositive('balanceByAmplitudes: initial', initial);
  if (trials.length < 3) throw refusal('balanceByAmplitudes: trials', 'three runs or more', trials);
  checkRuns('balanceByAmplitudes', input);
  const places = spreadOfPlaces(trials);
  if (places < ON_ONE_LINE) {
    throw refusal(
      'balanceByAmplitudes: trials',
      'at places that are not all on one line through the shaft',
      trials,
    );
  }
  if (trials.every(({ amplitude }) => amplitude === initial)) {
    throw refusal('balanceByAmplitudes: trials', 'runs of which one or more changes the amplitude', trials);
  }
  const fit = fitCircles({ initial, trials });
  const sigma = amplitudeError ?? errorFromMisfit(fit);
  const estimate = unbalanceOf(fit, sigma);
  const errors = correctionError(estimate);
  const mass = Math.hypot(estimate.x, estimate.y);
  const answer = {
    mass,
    angle: onCircle(Math.atan2(-estimate.y, -estimate.x)),
    ...errors,
    errorFrom: amplitudeError === undefined ? ('misfit' as const) : ('given' as const),
    ...(radius === undefined ? {} : { unbalance: mass * radius }),
    sensitivity: fit.sensitivity,
    residual: Math.sqrt(fit.sumOfSquares / (trials.length + 1)),
    expectedAmplitude:
      fit.sensitivity * Math.sqrt(Math.max(estimate.covariance[0] + estimate.covariance[2], 0)),
  };
  return {
    ...answer,
    warnings: amplitudeWarnings(answer, { ...input, places, sumOfSquares: fit.sumOfSquares }),
  };
}

/** Standard error of an amplitude, widened to what its few degrees of freedom leave open (Student's t). */
function errorFromMisfit({ sumOfSquares, degrees }: CircleFit): number {
  return Math.sqrt((sumOfSquares / degrees) * fUpperQuantile(OUTSIDE_ONE_SIGMA, [1, degrees]));
}

/** a / s with its covariance, from that of (a, s). */
function unbalanceOf({ response, sensitivity, covariance }: CircleFit, sigma: number) {
  const [x, y] = [response[0] / sensitivity, response[1] / sensitivity];
  const gradients = [
    [1 / sensitivity, 0, -x / sensitivity],
    [0, 1 / sensitivity, -y / sensitivity],
  ] as const;
  const [toX, toY] = gradients;
  const spread = (one: readonly number[], other: readonly number[]): number =>
    sigma ** 2 *
    one.reduce(
      (sum, g, i) => sum + other.reduce((inner, h, j) => inner + g * h * (covariance[i]?.[j] ?? 0), 0),
      0,
    );
  return { x, y, covariance: [spread(toX, toX), spread(toX, toY), spread(toY, toY)] as const };
}
