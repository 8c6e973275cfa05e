import { checkPositive, checkWhole } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import type { ShaftLine } from '../line/types.js';
import { fitLeastSquares, type LeastSquaresFit } from '../numerics/fit-least-squares.js';
import { invertPositive } from '../numerics/invert-positive.js';
import { calibrationPrior, lineAsBuilt, type PriorParameter } from './calibration-prior.js';
import type {
  CalibratedParameter,
  CalibrateLineOptions,
  LineCalibration,
  MeasuredResonance,
} from './calibration-types.js';
import { describeParameter } from './describe-parameter.js';
import { judgeCalibration } from './judge-calibration.js';
import { matchModes, type Candidate } from './match-modes.js';
import { modelledModes } from './resonance-model.js';

/** Prior standard deviations beyond which a stiffness is not sought, and by which derivatives are taken. */
const FURTHEST = 4;
const STEP = 0.05;
const DEFAULT_ERROR = 0.01;
/** Modes among which a resonance is sought. */
const MODES = 4;
const MOST_MODES = 12;

interface Task {
  readonly line: ShaftLine;
  readonly resonances: readonly MeasuredResonance[];
  readonly parameters: readonly PriorParameter[];
  /** Standard error of each resonance's logarithm. */
  readonly errors: readonly number[];
  readonly count: number;
}

/**
 * Adjusts how firmly the bushes hold to resonances that were measured, and keeps the line as built beside the line as designed.
 *
 * least Σ (ln f(θ) − ln fᵢ)² / σᵢ² + Σ θⱼ², stiffness = median · exp(spread · θ), |θ| ≤ 4: bounded least squares with a
 * log-normal prior about the designed values
 *
 * @param line - a checked line, as designed; left as it is
 * @param options - `resonances` of tap tests (Hz) or run-ups (rad/s and order) with their errors; what may be adjusted
 * @returns whether the measurement supports a change, and if not why; each parameter with how far it moved, its interval
 *   and how much of it the measurement gave; which resonance was taken for which mode
 * @throws RangeError for a resonance, mode, error, parameter or share out of its domain
 * @throws MechanismError if a part of the line is free to move
 * @remarks A design that calls a bush rigid, fixed or free to lean has no finite stiffness to start from: the medians are
 *   then 3000 EI/L³, 100 EI/L and 0.2 EI/L over the longest span, with a factor of ten either way. One resonance can tell
 *   one combination of stiffnesses, no more. A bush with clearance rings lower when struck gently than it whirls.
 * @example
 * ```ts
 * const line = exampleLine();
 * const [tapped] = criticalSpeeds(line, { count: 1 });
 * const { supported, matches, parameters } = calibrateLine(line, { resonances: [{ speed: 1.3 * tapped.speed }] });
 * supported // → true
 * matches[0].mode // → 1
 * parameters.map(({ kind }) => kind) // → ['radial', 'angular']
 * parameters[1].moved > 0 // → true
 * ```
 * @see Albert Tarantola, "Inverse Problem Theory", SIAM 2005, §3.2 (least squares with a prior); Clive Rodgers, "Inverse
 *   Methods for Atmospheric Sounding", 2000, §2.4 (how much comes from the data: trace of the averaging kernel)
 */
export function calibrateLine(line: ShaftLine, options: CalibrateLineOptions): LineCalibration {
  const task = prepare(line, options);
  const start = modelledModes(lineAsBuilt(line, task.parameters, []), task.resonances, task.count);
  const candidates = matchModes(task.resonances, start)
    .map((match): Candidate => ({ ...match, fit: fitModes(task, match.modes) }))
    .sort((a, b) => a.fit.sumOfSquares + a.penalty - b.fit.sumOfSquares - b.penalty);
  const [best] = candidates;
  if (best === undefined) return unmatched(line, task);
  const parameters = task.parameters.map((parameter, i) => describe(parameter, i, { line, fit: best.fit }));
  const effectiveParameters = parameters.reduce((sum, { dataShare }) => sum + dataShare, 0);
  const built = lineAsBuilt(line, task.parameters, best.fit.parameters);
  const count = task.resonances.length;
  const chiSquare = best.fit.residuals.slice(0, count).reduce((sum, r) => sum + r * r, 0);
  const reasons = judgeCalibration({ parameters, candidates, resonances: task.resonances });
  const supported = reasons.length === 0;
  return {
    supported,
    reasons,
    designed: line,
    built: supported ? built : line,
    parameters,
    matches: matchesOf(task, best.modes, built),
    chiSquare,
    totalChiSquare: best.fit.sumOfSquares,
    effectiveParameters,
  };
}

function prepare(line: ShaftLine, options: CalibrateLineOptions): Task {
  const { resonances, modelError = 0.01 } = options;
  if (resonances.length === 0) throw refusal('calibrateLine: resonances', 'one or more', resonances);
  resonances.forEach(checkResonance);
  if (!(modelError >= 0 && modelError < 1)) {
    throw refusal('calibrateLine: modelError', 'at least 0 and below 1', modelError);
  }
  const parameters = calibrationPrior(line, options.parameters);
  parameters.forEach((parameter, i) => {
    checkPositive(`calibrateLine: parameters[${i}].spread`, parameter.spread);
    const asked = options.parameters?.[i]?.supports.length ?? parameter.supports.length;
    if (parameter.supports.length === asked && asked > 0) return;
    throw refusal(`calibrateLine: parameters[${i}].supports`, 'supports that the line has', asked);
  });
  const errors = resonances.map((one) => {
    const value = one.frequency ?? one.speed;
    const error = Math.hypot((one.error ?? DEFAULT_ERROR * value) / value, modelError);
    if (error > 0) return error;
    throw refusal('calibrateLine: modelError', 'greater than 0 where a resonance has no error', modelError);
  });
  const count = Math.min(
    MOST_MODES,
    Math.max(MODES, resonances.length, ...resonances.map((one) => one.mode ?? 0)),
  );
  return { line, resonances, parameters, errors, count };
}

function checkResonance(resonance: MeasuredResonance, i: number): void {
  const where = `calibrateLine: resonances[${i}]`;
  if (resonance.frequency === undefined) {
    checkPositive(`${where}.speed`, resonance.speed);
    if (resonance.order !== undefined) checkPositive(`${where}.order`, resonance.order);
  } else checkPositive(`${where}.frequency`, resonance.frequency);
  if (resonance.mode !== undefined) checkWhole(`${where}.mode`, resonance.mode, [1, MOST_MODES]);
  if (resonance.error !== undefined && !(resonance.error >= 0 && resonance.error < Infinity)) {
    throw refusal(`${where}.error`, 'a finite number of at least 0', resonance.error);
  }
}

/** Residuals: the resonances over their errors, then the prior's offsets. */
function fitModes(
  { line, resonances, parameters, errors, count }: Task,
  modes: readonly number[],
): LeastSquaresFit {
  const misfit = (offsets: Float64Array): number[] => {
    const modelled = modelledModes(lineAsBuilt(line, parameters, offsets), resonances, count);
    return [
      ...resonances.map((one, i) => {
        const value = modelled[i]?.[modes[i] ?? 0];
        // A mode that gyroscopic stiffening has taken away is as far off as can be.
        return value === undefined ? 1e3 : Math.log(value / (one.frequency ?? one.speed)) / (errors[i] ?? 1);
      }),
      ...offsets,
    ];
  };
  return fitLeastSquares(misfit, {
    start: parameters.map(() => 0),
    steps: parameters.map(() => STEP),
    bounds: parameters.map(() => [-FURTHEST, FURTHEST] as const),
  });
}

function describe(
  { kind, spread, supports }: PriorParameter,
  i: number,
  { line, fit }: { readonly line: ShaftLine; readonly fit: LeastSquaresFit },
): CalibratedParameter {
  const moved = fit.parameters[i] ?? 0;
  const variance = invertPositive(fit.information)[i]?.[i] ?? 1;
  const reach = Math.sqrt(variance);
  const factor = Math.exp(spread * moved);
  const parameter = {
    kind,
    supports: supports.map((one) => ({ ...one, value: factor * one.median })),
    moved,
    factor,
    interval: [factor * Math.exp(-spread * reach), factor * Math.exp(spread * reach)] as const,
    dataShare: Math.max(0, 1 - variance),
    atBound: Math.abs(moved) >= FURTHEST,
  };
  return { ...parameter, sentence: describeParameter(parameter, line) };
}

function matchesOf(
  { line, resonances, errors, count }: Task,
  modes: readonly number[],
  built: ShaftLine,
): LineCalibration['matches'] {
  const [designed, after] = [line, built].map((one) => modelledModes(one, resonances, count));
  return resonances.map((one, i) => {
    const mode = modes[i] ?? 0;
    const measured = one.frequency ?? one.speed;
    return {
      resonance: i,
      mode: mode + 1,
      modeFrom: one.mode === undefined ? ('fit' as const) : ('given' as const),
      measured,
      designed: designed?.[i]?.[mode] ?? NaN,
      built: after?.[i]?.[mode] ?? NaN,
      error: (errors[i] ?? 0) * measured,
    };
  });
}

function unmatched(line: ShaftLine, { resonances }: Task): LineCalibration {
  return {
    supported: false,
    reasons: [
      `No whirl mode of the line lies within a factor of three of ${resonances.length === 1 ? 'the resonance' : 'each resonance'}: what rang may be the hull or a bracket.`,
    ],
    designed: line,
    built: line,
    parameters: [],
    matches: [],
    chiSquare: NaN,
    totalChiSquare: NaN,
    effectiveParameters: 0,
  };
}
