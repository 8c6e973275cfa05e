import { checkFinite, checkNotNegative, checkPositive } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import { magnitude, minus, over, plus, scaled, times, type Complex } from '../numerics/complex.js';
import { checkRuns } from './check-runs.js';
import { correctionError } from './correction-error.js';
import { onCircle } from './on-circle.js';
import type { BalanceWarning, InfluenceBalance, InfluenceInput, PhasedAmplitude } from './types.js';

/** Common practice: the trial mass should change the amplitude by about a third or the phase by 30°. */
const LEAST_CHANGE = 0.25;
const MOST_ANGLE_ERROR = Math.PI / 9;

/**
 * Single-plane balancing where amplitude and phase are known: the influence coefficient of one or more trial runs.
 *
 * H = Σ m̄ᵢ (Vᵢ − V₀) / Σ |mᵢ|², correction −V₀ / H; V = amplitude · e^{j phase}, m = mass · e^{j angle}
 *
 * @param input - `initial` and `trials` with amplitude in any unit and phase in rad; `phaseIs` says which way phases count
 * @returns mass in kg and angle in rad with standard errors, and H for later runs of the same line
 * @throws RangeError without a trial, for a value out of its domain, or where no trial mass changes the response
 * @remarks With angles counted in the direction of rotation, a phase that is a delay of the peak behind a mark is a `lag`.
 *   A wrong choice mirrors the answer about the trial place: if the correction makes it worse, try the other.
 * @example
 * const degrees = Math.PI / 180;
 * const found = balanceByInfluence({
 *   initial: { amplitude: 7, phase: 160 * degrees },
 *   trials: [{ mass: 0.1, angle: 0, amplitude: 5, phase: 70 * degrees }],
 *   phaseIs: 'lag',
 * });
 * found.mass * 1000 // → 81.37
 * found.angle / degrees // → 35.54
 * @see vector method of training notes on field balancing; the example's inputs are from one, its answer recomputed
 */
export function balanceByInfluence(input: InfluenceInput): InfluenceBalance {
  check(input);
  const { initial, trials, radius, phaseIs = 'lead' } = input;
  const sign = phaseIs === 'lead' ? 1 : -1;
  const vector = ({ amplitude, phase }: PhasedAmplitude): Complex => polar(amplitude, sign * phase);
  const start = vector(initial);
  const masses = trials.map(({ mass, angle }) => polar(mass, angle));
  const square = masses.reduce((sum, m) => sum + magnitude(m) ** 2, 0);
  const response = trials.reduce<Complex>(
    (sum, trial, i) => plus(sum, times(conjugate(masses[i] ?? [0, 0]), minus(vector(trial), start))),
    [0, 0],
  );
  const influence = scaled(response, 1 / square);
  if (magnitude(influence) === 0) {
    throw refusal('balanceByInfluence: trials', 'runs in which the trial mass changes the response', trials);
  }
  const unbalance = over(start, influence);
  const covariance = covarianceOf({ unbalance, influence, masses, square }, input);
  const errors = correctionError({ x: unbalance[0], y: unbalance[1], covariance });
  const mass = magnitude(unbalance);
  return {
    mass,
    angle: onCircle(Math.atan2(-unbalance[1], -unbalance[0])),
    ...errors,
    ...(radius === undefined ? {} : { unbalance: mass * radius }),
    influence: {
      amplitude: magnitude(influence),
      phase: onCircle(sign * Math.atan2(influence[1], influence[0])),
    },
    expectedAmplitude: magnitude(influence) * Math.sqrt(covariance[0] + covariance[2]),
    warnings: warn(
      errors.angleError,
      (magnitude(influence) * Math.sqrt(square / trials.length)) / initial.amplitude,
    ),
  };
}

function check(input: InfluenceInput): void {
  const { initial, trials, phaseError = 0 } = input;
  checkPositive('balanceByInfluence: initial.amplitude', initial.amplitude);
  checkFinite('balanceByInfluence: initial.phase', initial.phase);
  if (trials.length === 0) throw refusal('balanceByInfluence: trials', 'one run or more', trials);
  checkRuns('balanceByInfluence', input);
  trials.forEach(({ phase }, i) => {
    checkFinite(`balanceByInfluence: trials[${i}].phase`, phase);
  });
  checkNotNegative('balanceByInfluence: phaseError', phaseError);
}

interface Solved {
  readonly unbalance: Complex;
  readonly influence: Complex;
  readonly masses: readonly Complex[];
  readonly square: number;
}

/**
 * δU = (δV₀ − U δH) / H, δH = Σ m̄ᵢ (δVᵢ − δV₀) / Σ|m|²; the errors of each reading are taken alike in all directions, of
 * the larger of the amplitude's and what the phase's makes.
 */
function covarianceOf(
  { unbalance, influence, masses, square }: Solved,
  { initial, trials, amplitudeError = 0, phaseError = 0 }: InfluenceInput,
): readonly [number, number, number] {
  const variance = ({ amplitude }: PhasedAmplitude): number =>
    Math.max(amplitudeError, amplitude * phaseError) ** 2;
  const sum = masses.reduce<Complex>((total, m) => plus(total, conjugate(m)), [0, 0]);
  const byInitial = magnitude(plus([1, 0], scaled(times(unbalance, sum), 1 / square))) ** 2;
  const byTrials = trials.map(
    (trial, i) => ((magnitude(unbalance) * magnitude(masses[i] ?? [0, 0])) / square) ** 2 * variance(trial),
  );
  const total = byTrials.reduce((all, one) => all + one, byInitial * variance(initial));
  const each = total / magnitude(influence) ** 2;
  return [each, 0, each];
}

function polar(size: number, angle: number): Complex {
  return [size * Math.cos(angle), size * Math.sin(angle)];
}

function conjugate([real, imaginary]: Complex): Complex {
  return [real, -imaginary];
}

function warn(angleError: number, change: number): BalanceWarning[] {
  return [
    ...(change < LEAST_CHANGE
      ? [
          {
            code: 'trial-too-small' as const,
            sentence:
              'The trial mass changes the response by less than a quarter of the first amplitude: too little to read well. Repeat with a larger one.',
          },
        ]
      : []),
    ...(angleError > MOST_ANGLE_ERROR
      ? [
          {
            code: 'answer-uncertain' as const,
            sentence: 'The readings leave more than 20° open. Read each run several times.',
          },
        ]
      : []),
  ];
}
