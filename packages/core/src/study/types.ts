import type { RunningPoint } from '../drive/types.js';
import type { LineLoads } from '../loads/types.js';
import type { SpeedFluctuation } from '../motion/types.js';
import type { TorsionalCritical } from '../twist/types.js';
import type { ModeShape, Whirl } from '../whirl/types.js';

/**
 * `inside` a band to avoid or beyond what a part bears; `near` a band, above the first whirl or at the edge of what a part
 * bears; `clear` of all that.
 */
export type Verdict = 'clear' | 'near' | 'inside';

/** A figure of a sentence, in SI, with the kind of quantity it is. */
export interface Figure {
  readonly value: number;
  readonly quantity: Quantity;
}

/**
 * speed rad/s · angle rad · length m · frequency Hz · torque N·m · speed-angle rad²/s · mass kg · force N · voltage V ·
 * share, ratio and count dimensionless.
 */
export type Quantity =
  | 'speed'
  | 'angle'
  | 'length'
  | 'frequency'
  | 'torque'
  | 'speed-angle'
  | 'mass'
  | 'force'
  | 'voltage'
  | 'share'
  | 'ratio'
  | 'count';

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
  /** What it does to the verdict; a `note` leaves the verdict alone. */
  readonly severity: Verdict | 'note';
  /** Where its limit comes from. */
  readonly source: string;
}

export type ReasonKind =
  | 'band'
  | 'above-first-whirl'
  | 'margin'
  | 'joint-angle-limit'
  | 'speed-times-angle'
  | 'fluctuation'
  | 'rated-torque'
  | 'fastener'
  | 'bush'
  | 'shaft-strength'
  | 'rattle'
  | 'span'
  | 'motor-reach'
  | 'unknown-torque';

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
  /** In words, lower case: 'first whirl', 'first whirl driven by the joints, twice a turn'. */
  readonly name: string;
  /** rad/s */
  readonly from: number;
  /** rad/s */
  readonly to: number;
  /** Whether the line would swing sideways or in twist. */
  readonly motion: 'whirl' | 'twist';
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
  readonly kind: 'universal' | 'rigid' | 'flexible';
  /** rad */
  readonly angle: number;
  /** max − min of its own speed ratio; 0 for a rigid or flexible joint. */
  readonly degree: number;
}

/** The fastest that the line should turn. */
export interface SpeedLimit extends Statement {
  /** rad/s */
  readonly speed: number;
}

/** Shares of a critical speed to keep clear of, on either side. */
export interface Margins {
  /** First order. Default 0.25. */
  readonly whirl: number;
  /** Second order, where universal joints run at an angle. Default 0.15. */
  readonly joints: number;
  /** Blade order. Default 0.15. */
  readonly blades: number;
  /** Torsional resonances, any order. Default 0.1. */
  readonly twist: number;
}

/** What motor and supply make of a line. */
export interface DriveAssessment {
  /** rad/s with nothing to turn. */
  readonly noLoadSpeed: number;
  /** Full throttle with the propeller held at the quay; absent where its torque is not known. */
  readonly fullThrottle?: RunningPoint;
  /** Share of the supply voltage that gives the assessed speed; absent where it cannot be reached or is not known. */
  readonly throttle?: number;
}

export interface AssessOptions {
  /** rad/s, the wanted shaft speed. */
  readonly speed: number;
  readonly margins?: Partial<Margins>;
  /** N·m, mean torque at that speed; the propeller's own, held at the quay, if absent. */
  readonly torque?: number;
}

/** Everything about one line at one speed. */
export interface Assessment {
  /** rad/s */
  readonly speed: number;
  readonly joints: readonly JointAssessment[];
  readonly fluctuation: SpeedFluctuation;
  readonly criticalSpeeds: readonly LineCriticalSpeed[];
  /** Shaft speeds at which an order meets a torsional mode, lowest first. */
  readonly torsionalCriticals: readonly TorsionalCritical[];
  /** Couples, reactions, stresses, screws and bushes; absent where the torque is not known. */
  readonly loads?: LineLoads;
  /** Absent where the line has no motor or no supply. */
  readonly drive?: DriveAssessment;
  /** By where they begin. */
  readonly avoidBands: readonly AvoidBand[];
  readonly speedLimit: SpeedLimit;
  readonly verdict: Verdict;
  /** Most important first. */
  readonly reasons: readonly Reason[];
}
