/** One run with a trial mass on the rotor. */
export interface TrialRun {
  /** kg */
  readonly mass: number;
  /** rad, where the trial mass sits, counted from any mark on the rotor. */
  readonly angle: number;
  /** Amplitude of order 1, in the unit of the initial run. */
  readonly amplitude: number;
}

export interface AmplitudeBalanceInput {
  /** Amplitude of order 1 as found, any unit, greater than 0. */
  readonly initial: number;
  /** Three or more runs at the speed of the initial one, each with its trial mass alone. */
  readonly trials: readonly TrialRun[];
  /** m, at which the trial masses sit and the correction will. */
  readonly radius?: number;
  /** Standard error of each amplitude, in its unit; absent: taken from how badly the readings fit each other. */
  readonly amplitudeError?: number;
}

/** A mass and where to put it. */
export interface Correction {
  /** kg, at the radius of the trial masses. */
  readonly mass: number;
  /** rad, from 0 to below 2π, counted as the trial angles are. */
  readonly angle: number;
}

export type BalanceWarningCode =
  'trial-too-small' | 'trial-too-large' | 'circles-inconsistent' | 'angles-ill-placed' | 'answer-uncertain';

/** What makes an answer doubtful, and what to do about it. */
export interface BalanceWarning {
  readonly code: BalanceWarningCode;
  readonly sentence: string;
}

export interface AmplitudeBalance extends Correction {
  /** kg, standard error; with the errors taken from few spare readings, widened to hold 68 % all the same. */
  readonly massError: number;
  /** rad, standard error, at most π. */
  readonly angleError: number;
  /** Where the errors come from: the `amplitudeError` given, or the misfit of the readings. */
  readonly errorFrom: 'given' | 'misfit';
  /** kg·m as found, where the radius was given. */
  readonly unbalance?: number;
  /** Amplitude for each kg at the radius of the trial masses. */
  readonly sensitivity: number;
  /** How badly the circles miss a common point: root mean square of the misfit of all amplitudes, in their unit. */
  readonly residual: number;
  /** Amplitude that the errors let expect once the correction is on: what is left of order 1, root mean square. */
  readonly expectedAmplitude: number;
  /** Empty where all is well. */
  readonly warnings: readonly BalanceWarning[];
}

export interface TwoRunInput {
  /** Amplitude of order 1 as found, any unit, greater than 0. */
  readonly initial: number;
  /** The same mass at two places half a turn apart. */
  readonly trials: readonly [TrialRun, TrialRun];
  /** m */
  readonly radius?: number;
  /** Standard error of each amplitude, in its unit. Default 0. */
  readonly amplitudeError?: number;
}

export interface TwoRunCandidate extends Correction {
  /** kg */
  readonly massError: number;
  /** rad */
  readonly angleError: number;
}

export interface TwoRunBalance {
  /** One of the two is right; amplitudes alone cannot say which. */
  readonly candidates: readonly [TwoRunCandidate, TwoRunCandidate];
  /** kg·m as found, where the radius was given. */
  readonly unbalance?: number;
  /** Amplitude for each kg. */
  readonly sensitivity: number;
  /** Amplitude to be met if the wrong one was fitted; the right one leaves little. */
  readonly amplitudeIfWrong: number;
  readonly warnings: readonly BalanceWarning[];
}

/** An amplitude with its phase against a mark on the shaft. */
export interface PhasedAmplitude {
  readonly amplitude: number;
  /** rad */
  readonly phase: number;
}

export interface InfluenceInput {
  readonly initial: PhasedAmplitude;
  /** One run or more, each with its trial mass alone. */
  readonly trials: readonly (TrialRun & PhasedAmplitude)[];
  /** m */
  readonly radius?: number;
  /** Whether a phase grows when what causes it moves on in the direction of rotation (`lead`) or falls (`lag`). Default 'lead'. */
  readonly phaseIs?: 'lead' | 'lag';
  /** Standard error of each amplitude, in its unit. Default 0. */
  readonly amplitudeError?: number;
  /** rad, standard error of each phase. Default 0. */
  readonly phaseError?: number;
}

export interface InfluenceBalance extends Correction {
  /** kg */
  readonly massError: number;
  /** rad */
  readonly angleError: number;
  /** kg·m as found, where the radius was given. */
  readonly unbalance?: number;
  /** Amplitude for each kg, and the phase of the response to a mass at angle 0. */
  readonly influence: PhasedAmplitude;
  /** Amplitude that the errors let expect once the correction is on. */
  readonly expectedAmplitude: number;
  readonly warnings: readonly BalanceWarning[];
}

export interface TrialMassInput {
  /** kg, of the part to be balanced with what turns in the same bearing. */
  readonly rotorMass: number;
  /** rad/s, of the balancing runs. */
  readonly speed: number;
  /** m, at which the trial mass will sit. */
  readonly radius: number;
  /** Centrifugal force of the trial mass over the weight of the rotor. Default 0.1. */
  readonly share?: number;
}

export interface TrialMass {
  /** kg */
  readonly mass: number;
  /** N, its centrifugal force at that speed: what must hold it. */
  readonly force: number;
  /** kg·m */
  readonly unbalance: number;
}

export interface SplitOptions {
  /** rad, where mass may be put (blades) or taken away (holes), two or more places. */
  readonly positions: readonly number[];
  /** Default 'adding'; 'removing' takes the mass away on the other side. */
  readonly by?: 'adding' | 'removing';
}

export interface SplitPart extends Correction {
  /** Index into the positions. */
  readonly position: number;
}

export interface SplitCorrection {
  /** One or two places with what to add or take away there. */
  readonly parts: readonly SplitPart[];
  /** What the positions cannot reach, as a correction that stays undone; mass 0 where they surround the shaft. */
  readonly left: Correction;
}

export interface VerificationInput {
  /** Amplitude of order 1 before the correction. */
  readonly before: number;
  /** Amplitude of order 1 with the correction on, at the same speed. */
  readonly after: number;
  /** Amplitude that was expected: `expectedAmplitude` of the balance. */
  readonly expected: number;
  /** Standard error of each amplitude, in its unit. Default 0. */
  readonly amplitudeError?: number;
}

export interface Verification {
  readonly verdict: 'as expected' | 'lower, but more is left than expected' | 'no difference shown' | 'worse';
  /** After over before. */
  readonly ratio: number;
  /** Standard error of the ratio. */
  readonly ratioError: number;
  /** 20 log₁₀ of the ratio. */
  readonly decibels: number;
  /** What it means and what to do next. */
  readonly sentence: string;
}
