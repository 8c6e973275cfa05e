import { numberText } from '../internal/number-text.js';
import { fUpperQuantile } from '../numerics/f-upper-quantile.js';
import type { AmplitudeBalance, BalanceWarning, TrialRun } from './types.js';

/** Common practice: a trial mass should change the amplitude by about a third, and be no multiple of the unbalance. */
const LEAST_EFFECT = 0.25;
const MOST_EFFECT = 3;
/** Error of one amplitude, by the misfit, over the initial amplitude, where none was given. Common practice. */
const MOST_MISFIT = 0.03;
/** Chance that sound readings are called inconsistent, where their error is known. */
const FALSE_ALARM = 0.01;
/** Three equal masses evenly round have 1, at 0, 90 and 180° 0.59, at 0, 60 and 120° 0.11, at 0, 45 and 90° 0.025. */
const LEAST_SPREAD = 0.08;
/** Degrees of freedom of an error that is known. */
const MANY = 1e6;
const MOST_ANGLE_ERROR = Math.PI / 9;
const MOST_MASS_ERROR = 0.35;

interface Readings {
  readonly initial: number;
  readonly trials: readonly TrialRun[];
  readonly amplitudeError?: number;
  /** See `spreadOfPlaces`. */
  readonly places: number;
  readonly sumOfSquares: number;
}

/** What makes an answer from amplitudes doubtful. */
export function amplitudeWarnings(
  answer: Omit<AmplitudeBalance, 'warnings'>,
  readings: Readings,
): BalanceWarning[] {
  return [
    ...trialSize(answer, readings),
    ...misfit(answer, readings),
    ...places(readings),
    ...uncertain(answer),
  ];
}

function trialSize(
  { sensitivity }: Pick<AmplitudeBalance, 'sensitivity'>,
  { initial, trials }: Readings,
): BalanceWarning[] {
  const largest = Math.max(...trials.map(({ mass }) => mass));
  const effect = (sensitivity * largest) / initial;
  const share = `${numberText(100 * effect, 2)} %`;
  if (effect < LEAST_EFFECT) {
    return [
      {
        code: 'trial-too-small',
        sentence: `The trial mass shakes by itself ${share} as much as the line did as found: too little to read well. Repeat with ${numberText(0.5 / Math.max(effect, 0.005), 2)} times the mass.`,
      },
    ];
  }
  if (effect <= MOST_EFFECT) return [];
  return [
    {
      code: 'trial-too-large',
      sentence: `The trial mass shakes by itself ${share} as much as the line did as found: it swamps the unbalance and strains the line. Repeat with ${numberText(1 / effect, 2)} times the mass.`,
    },
  ];
}

function misfit({ residual }: Pick<AmplitudeBalance, 'residual'>, readings: Readings): BalanceWarning[] {
  const { initial, trials, amplitudeError = 0, sumOfSquares } = readings;
  const degrees = trials.length - 2;
  const most =
    amplitudeError > 0
      ? amplitudeError * Math.sqrt(fUpperQuantile(FALSE_ALARM, [degrees, MANY]))
      : MOST_MISFIT * initial;
  if (Math.sqrt(sumOfSquares / degrees) <= most) return [];
  return [
    {
      code: 'circles-inconsistent',
      sentence: `The circles miss a common point by ${numberText((100 * residual) / initial, 2)} % of the first amplitude. Check that every run had the same speed and only its own trial mass, and that nothing is loose; repeat the first run, then the one that fits worst.`,
    },
  ];
}

function places({ places: spread }: Readings): BalanceWarning[] {
  if (spread >= LEAST_SPREAD) return [];
  return [
    {
      code: 'angles-ill-placed',
      sentence:
        'The trial places lie too much to one side or on one line: small errors of reading move the answer far. Spread them evenly, a third of a turn apart.',
    },
  ];
}

function uncertain({
  mass,
  massError,
  angleError,
}: Pick<AmplitudeBalance, 'mass' | 'massError' | 'angleError'>): BalanceWarning[] {
  if (angleError <= MOST_ANGLE_ERROR && massError <= MOST_MASS_ERROR * mass) return [];
  const degrees = numberText((angleError * 180) / Math.PI, 2);
  const share = mass > 0 ? `${numberText((100 * massError) / mass, 2)} % of the mass` : 'all of the mass';
  return [
    {
      code: 'answer-uncertain',
      sentence: `The readings leave ± ${degrees}° and ± ${share} open. Read each amplitude several times, or fit half the correction and start again from there.`,
    },
  ];
}
