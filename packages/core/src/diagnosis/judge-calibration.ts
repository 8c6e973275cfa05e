import { numberText } from '../internal/number-text.js';
import { fUpperQuantile } from '../numerics/f-upper-quantile.js';
import type { CalibratedParameter, MeasuredResonance } from './calibration-types.js';
import type { Candidate } from './match-modes.js';

/** A parameter counts as measured where half of what is known of it is. */
const LEAST_SHARE = 0.5;
/** Chance that sound data are refused as beyond all reason. */
const REFUSED = 0.005;
/** Degrees of freedom of an error that is known. */
const MANY = 1e6;
/** Two ways to name the modes are told apart by this difference of χ²: e² to one. */
const APART = 4;

interface Judged {
  readonly parameters: readonly CalibratedParameter[];
  /** Best first. */
  readonly candidates: readonly Candidate[];
  readonly resonances: readonly MeasuredResonance[];
}

/** Why the data do not support a change of the line; empty where they do. */
export function judgeCalibration({ parameters, candidates, resonances }: Judged): string[] {
  const total = candidates[0]?.fit.sumOfSquares ?? 0;
  const count = resonances.length;
  const share = Math.max(0, ...parameters.map(({ dataShare }) => dataShare));
  const reasons: string[] = [];
  if (total > count * fUpperQuantile(REFUSED, [count, MANY])) {
    reasons.push(
      `No stiffness within reason explains ${count === 1 ? 'the resonance' : `the ${count} resonances together`} (χ² ${numberText(total)} for ${count}): look at what each mode was taken for, at masses and diameters, and whether the propeller was in air or water.`,
    );
  }
  if (parameters.some(({ atBound }) => atBound)) {
    reasons.push(
      'A stiffness ran to the end of its range: something other than the bushes is not as designed.',
    );
  }
  if (share < LEAST_SHARE) {
    reasons.push(
      `The ${count === 1 ? 'resonance says' : 'resonances say'} too little: at most ${numberText(100 * share, 2)} % of what is known of any stiffness would come from the measurement, the rest from what was assumed. Measure more modes or to a smaller error, or adjust fewer stiffnesses.`,
    );
  }
  return [...reasons, ...ambiguity(candidates, resonances)];
}

function ambiguity([best, second]: readonly Candidate[], resonances: readonly MeasuredResonance[]): string[] {
  if (best === undefined) return [];
  if (best.penalty > 0 && resonances.some(({ mode }) => mode === undefined)) {
    const lowest = Math.min(...best.modes) + 1;
    return [
      `The fit passes over a mode that was not measured${lowest > 1 ? ` and takes the lowest resonance for mode ${lowest}` : ''}: look for the one between, or give the modes if you know them.`,
    ];
  }
  if (second === undefined) return [];
  if (second.fit.sumOfSquares + second.penalty - best.fit.sumOfSquares - best.penalty > APART) return [];
  const i = resonances.findIndex((_, index) => best.modes[index] !== second.modes[index]);
  const modes = [best, second].map((one) => (one.modes[i] ?? 0) + 1);
  return [
    `Resonance ${i + 1} may as well be mode ${modes[1]} as mode ${modes[0]}: strike or listen at several places to tell which, and give its mode.`,
  ];
}
