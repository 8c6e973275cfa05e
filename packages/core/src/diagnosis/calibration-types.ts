import type { ShaftLine } from '../line/types.js';
import type { Whirl } from '../whirl/types.js';

interface MeasuredBase {
  /** Which whirl mode of the line it is, 1 for the lowest; absent: found by which fits best. */
  readonly mode?: number;
  /** Standard error, Hz or rad/s as what was measured. Default 1 % of it. */
  readonly error?: number;
  /** What the propeller turned in. Default 'water'. */
  readonly medium?: 'air' | 'water';
}

/** A tap test: the line at rest, struck, and the frequency at which it rang. */
export interface TappedResonance extends MeasuredBase {
  /** Hz */
  readonly frequency: number;
  readonly speed?: undefined;
}

/** A run-up: the speed at which an order stood highest. */
export interface RunUpResonance extends MeasuredBase {
  /** rad/s */
  readonly speed: number;
  /** Default 1. */
  readonly order?: number;
  /** Default 'forward'. */
  readonly whirl?: Whirl;
  readonly frequency?: undefined;
}

export type MeasuredResonance = TappedResonance | RunUpResonance;

/** What may be adjusted: one factor on a stiffness that several supports share. */
export interface CalibrationParameter {
  readonly kind: 'radial' | 'angular';
  readonly supports: readonly { readonly shaft: number; readonly support: number }[];
  /** N/m or N·m/rad, most likely before anything is measured; absent: as designed, see `calibrateLine`. */
  readonly median?: number;
  /** Standard deviation of the natural logarithm about it. Default ln 10: a factor of ten either way. */
  readonly spread?: number;
}

export interface CalibrateLineOptions {
  /** One or more. */
  readonly resonances: readonly MeasuredResonance[];
  /** Default: radial stiffness and end fixity of the supports of the last shaft that has any, shared by them. */
  readonly parameters?: readonly CalibrationParameter[];
  /** Share by which the model's frequencies err for other reasons than the bushes. Default 0.01. */
  readonly modelError?: number;
}

export interface CalibratedParameter {
  readonly kind: 'radial' | 'angular';
  readonly supports: readonly CalibratedSupport[];
  /** Standard deviations of the prior by which it moved. */
  readonly moved: number;
  /** Factor on the medians, and the factors one posterior standard deviation either way. */
  readonly factor: number;
  readonly interval: readonly [low: number, high: number];
  /** 0 … 1: share of what is now known of it that the measurement gave; the rest is what was assumed. */
  readonly dataShare: number;
  /** Whether it stopped four prior standard deviations out. */
  readonly atBound: boolean;
  /** In words. */
  readonly sentence: string;
}

export interface CalibratedSupport {
  readonly shaft: number;
  readonly support: number;
  /** N/m or N·m/rad as designed; 0 for free to lean, Infinity for rigid or fixed. */
  readonly designed: number;
  /** Median that the prior was put about. */
  readonly median: number;
  /** As built. */
  readonly value: number;
}

export interface ResonanceMatch {
  /** Index into the resonances given. */
  readonly resonance: number;
  /** 1 for the lowest. */
  readonly mode: number;
  /** Whether the caller said so. */
  readonly modeFrom: 'given' | 'fit';
  /** Hz or rad/s, as what was measured; so are the next three. */
  readonly measured: number;
  readonly designed: number;
  readonly built: number;
  /** Error of measurement and model together. */
  readonly error: number;
}

export interface LineCalibration {
  /** Whether the measurement supports a change of the line. */
  readonly supported: boolean;
  /** Why not, in sentences; empty where it does. */
  readonly reasons: readonly string[];
  readonly designed: ShaftLine;
  /** The line with the stiffnesses found; the designed one where that is not supported. */
  readonly built: ShaftLine;
  readonly parameters: readonly CalibratedParameter[];
  readonly matches: readonly ResonanceMatch[];
  /** Sum of squares of the misfits of the resonances over their errors, after the fit. */
  readonly chiSquare: number;
  /** The same with the squares of `moved` added: about as large as there are resonances where all is well. */
  readonly totalChiSquare: number;
  /** How many parameters' worth of knowledge the measurement gave, from 0 to their count. */
  readonly effectiveParameters: number;
}
