import type { Whirl } from '../whirl/types.js';
import type { Excitation, Margins, Verdict } from './types.js';

/**
 * How far a measure may be off: a number is the half-width of a rectangle, any value within ± as likely as another, which is
 * what a ruler's reading means; else a standard deviation of a normal spread.
 */
export type Tolerance = number | { readonly standardDeviation: number };

export interface ToleranceOptions {
  /** rad/s, the wanted shaft speed. */
  readonly speed: number;
  /** By the path of the measure in the line: `{ 'shafts[1].outerDiameter': 0.00002 }`, in its own SI unit. */
  readonly tolerances: Readonly<Record<string, Tolerance>>;
  /** Default 1000. */
  readonly samples?: number;
  /** Default 1. */
  readonly seed?: number;
  readonly margins?: Partial<Margins>;
  /** Told now and then, from 0 to 1. */
  readonly onProgress?: (share: number) => void;
  /** Looked at now and then; an abort throws its reason. */
  readonly signal?: AbortLike;
}

/** What is used of an `AbortSignal`. */
export interface AbortLike {
  readonly aborted: boolean;
  readonly reason?: unknown;
}

/** How a figure spreads over the samples, in its own SI unit. */
export interface Spread {
  /** With every measure as entered. */
  readonly nominal: number;
  readonly mean: number;
  readonly standardDeviation: number;
  /** 5 of 100 samples lie below. */
  readonly low: number;
  readonly median: number;
  /** 5 of 100 samples lie above. */
  readonly high: number;
  /** Every sample, in the order drawn. */
  readonly values: Float64Array;
}

export interface CriticalSpread extends Spread {
  readonly excitation: Excitation;
  readonly order: number;
  readonly whirl: Whirl;
  /** 1 for the lowest. */
  readonly mode: number;
}

/** A band to avoid with the spread of its edges. */
export interface BandSpread {
  readonly name: string;
  readonly excitation: Excitation;
  readonly order: number;
  readonly mode: number;
  /** rad/s, where the band begins in 5 of 100 samples or fewer. */
  readonly from: number;
  /** rad/s, where it ends in all but 5 of 100. */
  readonly to: number;
  /** rad/s, as entered. */
  readonly nominalFrom: number;
  readonly nominalTo: number;
  /** Chance that the wanted speed lies in it, with its standard error. */
  readonly chance: number;
  readonly chanceError: number;
}

/** What one measure does to the critical speed that decides. */
export interface Sensitivity {
  readonly path: string;
  /** Share of the variance of that critical speed that goes with this measure, 0 to 1. */
  readonly share: number;
  /** rad/s for one SI unit of the measure. */
  readonly slope: number;
}

export interface ToleranceStudy {
  readonly samples: number;
  readonly seed: number;
  /** Draws that gave no line that can be built, and were drawn anew. */
  readonly redrawn: number;
  readonly criticalSpeeds: readonly CriticalSpread[];
  readonly bands: readonly BandSpread[];
  /** rad/s */
  readonly speedLimit: Spread;
  /** max − min of the speed ratio. */
  readonly fluctuation: Spread;
  /** Share of the samples with each verdict on the bands alone. */
  readonly verdict: Readonly<Record<Verdict, number>>;
  /** Chance that the wanted speed lies in some band, with its standard error. */
  readonly chanceInBand: number;
  readonly chanceInBandError: number;
  /** Which critical speed the sensitivities speak of: the one whose band lies nearest to the wanted speed. */
  readonly decisive: Pick<CriticalSpread, 'excitation' | 'order' | 'whirl' | 'mode'>;
  /** Measures by what they do to it, the one most worth taking again first. */
  readonly sensitivities: readonly Sensitivity[];
}
