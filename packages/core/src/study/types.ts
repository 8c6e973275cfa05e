import type { SpeedFluctuation } from '../motion/types.js';
import type { ModeShape, Whirl } from '../whirl/types.js';

export type Verdict = 'clear' | 'near' | 'inside';

/** A figure of a sentence, in SI, with the kind of quantity it is. */
export interface Figure {
  readonly value: number;
  readonly quantity: Quantity;
}

/** speed rad/s · angle rad · length m · frequency Hz · ratio and count dimensionless. */
export type Quantity = 'speed' | 'angle' | 'length' | 'frequency' | 'ratio' | 'count';

/** A sentence whose figures are kept apart, so that each reader can have their own units. */
export interface Statement {
  /** The sentence with each figure as `{name}`. */
  readonly template: string;
  readonly figures: Readonly<Record<string, Figure>>;
  /** The sentence with speeds in rpm, angles in degrees, lengths in mm. */
  readonly sentence: string;
}

/** One reason behind a verdict. */
export interface Reason extends Statement {
  readonly kind: ReasonKind;
  readonly severity: Verdict;
  /** Where its limit comes from. */
  readonly source: string;
}

export type ReasonKind =
  | 'band'
  | 'above-first-whirl'
  | 'margin'
  | 'joint-angle-limit'
  | 'speed-times-angle'
  | 'unequal-joints';

/** What shakes the line at this order. */
export type Excitation = 'unbalance' | 'joints' | 'blades';

/** A critical speed of the line for one excitation. */
export interface LineCriticalSpeed {
  readonly excitation: Excitation;
  readonly order: number;
  readonly whirl: Whirl;
  /** 1 for the lowest. */
  readonly mode: number;
  /** rad/s */
  readonly speed: number;
  readonly shape: ModeShape;
}

/** Speeds not to dwell in. */
export interface AvoidBand extends Statement {
  /** rad/s */
  readonly from: number;
  /** rad/s */
  readonly to: number;
  readonly excitation: Excitation;
  readonly order: number;
  /** 1 for the lowest. */
  readonly mode: number;
  /** rad/s, the critical speeds that the band covers: backward and forward, or forward alone. */
  readonly criticalSpeeds: readonly number[];
  /** Share of the critical speed kept clear on either side. */
  readonly margin: number;
}

export interface JointAssessment {
  readonly index: number;
  readonly name: string;
  /** rad */
  readonly angle: number;
  /** max − min of its own speed ratio. */
  readonly degree: number;
}

export interface SpeedLimit extends Statement {
  /** rad/s */
  readonly speed: number;
}

/** Shares of a critical speed to keep clear of. */
export interface Margins {
  /** First order, either side. Default 0.25. */
  readonly whirl: number;
  /** Second order of universal joints, either side. Default 0.15. */
  readonly joints: number;
  /** Blade order, either side. Default 0.15. */
  readonly blades: number;
}

export interface AssessOptions {
  /** rad/s, the wanted shaft speed. */
  readonly speed: number;
  readonly margins?: Partial<Margins>;
}

/** Everything about one line at one speed. */
export interface Assessment {
  readonly speed: number;
  readonly joints: readonly JointAssessment[];
  readonly fluctuation: SpeedFluctuation;
  readonly criticalSpeeds: readonly LineCriticalSpeed[];
  readonly avoidBands: readonly AvoidBand[];
  readonly speedLimit: SpeedLimit;
  readonly verdict: Verdict;
  /** Most important first. */
  readonly reasons: readonly Reason[];
}
