import { checkPositive } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import { checkRuns } from './check-runs.js';
import { onCircle } from './on-circle.js';
import type { BalanceWarning, TrialRun, TwoRunBalance, TwoRunCandidate, TwoRunInput } from './types.js';

/** rad and share: how far from half a turn, and from each other, places and masses may be. */
const HALF_TURN_WITHIN = Math.PI / 180;
const SAME_MASS_WITHIN = 1e-3;

/**
 * Single-plane balancing from amplitudes with one trial mass at two places half a turn apart: two answers, one of them
 * right.
 *
 * k² = (T₁² + T₂²)/2 − O², cos δ = (T₁² − T₂²)/(4 O k); correction m O/k at δ + 180° either way from the first place
 *
 * @param input - `initial` O greater than 0; `trials` T₁ and T₂ with one mass in kg, half a turn apart
 * @returns both candidates, and the amplitude that tells the wrong one when it is fitted
 * @throws RangeError where the masses differ, the places are not half a turn apart (within 1°), or the amplitudes
 *   leave no effect of the trial mass
 * @remarks Try one; where it is the wrong one the amplitude comes near `amplitudeIfWrong`: move the mass to the other.
 * @example
 * const { candidates } = balanceByTwoRuns({
 *   initial: 3,
 *   trials: [{ mass: 0.01, angle: 0, amplitude: 5 }, { mass: 0.01, angle: Math.PI, amplitude: 4 }],
 * });
 * candidates.map(({ mass }) => 1000 * mass) // → [8.8465, 8.8465]
 * candidates.map(({ angle }) => (angle * 180) / Math.PI) // → [102.78, 257.22]
 * @see http://www.mwdropbox.com/Dropbox/_1998_retired_files/BalanceB.txt (inputs of the example; answer derived)
 */
export function balanceByTwoRuns(input: TwoRunInput): TwoRunBalance {
  const { initial, trials, radius, amplitudeError = 0 } = input;
  const [first, second] = trials;
  checkPositive('balanceByTwoRuns: initial', initial);
  checkRuns('balanceByTwoRuns', input);
  checkPair(trials);
  const square = (first.amplitude ** 2 + second.amplitude ** 2) / 2 - initial ** 2;
  if (!(square > 0)) {
    throw refusal(
      'balanceByTwoRuns: trials',
      `amplitudes whose mean square is above that of the initial run (${initial})`,
      [first.amplitude, second.amplitude].join(' and '),
    );
  }
  const effect = Math.sqrt(square);
  const cosine = (first.amplitude ** 2 - second.amplitude ** 2) / (4 * initial * effect);
  const mass = (first.mass * initial) / effect;
  const apart = Math.acos(Math.max(-1, Math.min(1, cosine)));
  const errors = errorsOf({ ...input, effect, cosine }, amplitudeError);
  const candidate = (way: 1 | -1): TwoRunCandidate => ({
    mass,
    angle: onCircle(first.angle + way * (Math.PI - apart)),
    ...errors,
  });
  return {
    candidates: [candidate(1), candidate(-1)],
    ...(radius === undefined ? {} : { unbalance: mass * radius }),
    sensitivity: effect / first.mass,
    amplitudeIfWrong: 2 * initial * Math.sin(apart),
    warnings: warn(cosine),
  };
}

function checkPair([first, second]: readonly [TrialRun, TrialRun]): void {
  if (Math.abs(second.mass / first.mass - 1) > SAME_MASS_WITHIN) {
    throw refusal('balanceByTwoRuns: trials', 'runs with the same mass', `${first.mass} and ${second.mass}`);
  }
  const apart = Math.abs(onCircle(second.angle - first.angle) - Math.PI);
  if (apart > HALF_TURN_WITHIN) {
    throw refusal('balanceByTwoRuns: trials', 'half a turn (π) apart', `${first.angle} and ${second.angle}`);
  }
}

/** From derivatives of mass and δ by the three amplitudes, which err independently. */
function errorsOf(
  { initial, trials, effect, cosine }: TwoRunInput & { readonly effect: number; readonly cosine: number },
  amplitudeError: number,
): { readonly massError: number; readonly angleError: number } {
  if (amplitudeError === 0) return { massError: 0, angleError: 0 };
  const [{ mass, amplitude: one }, { amplitude: two }] = trials;
  const effectBy = [-initial / effect, one / (2 * effect), two / (2 * effect)];
  const cosineBy = [
    -cosine / initial - (cosine / effect) * (effectBy[0] ?? 0),
    one / (2 * initial * effect) - (cosine / effect) * (effectBy[1] ?? 0),
    -two / (2 * initial * effect) - (cosine / effect) * (effectBy[2] ?? 0),
  ];
  const massBy = effectBy.map(
    (slope, i) => (i === 0 ? mass / effect : 0) - ((mass * initial) / effect ** 2) * slope,
  );
  const sine = Math.sqrt(Math.max(1 - cosine ** 2, 1e-12));
  return {
    massError: amplitudeError * Math.hypot(...massBy),
    angleError: Math.min((amplitudeError * Math.hypot(...cosineBy)) / sine, Math.PI),
  };
}

function warn(cosine: number): BalanceWarning[] {
  if (Math.abs(cosine) <= 1) return [];
  return [
    {
      code: 'circles-inconsistent',
      sentence:
        'No place of the unbalance explains both amplitudes; the nearest one lies on the line of the trial places. Check that every run had the same speed and only its own trial mass, and repeat.',
    },
  ];
}
