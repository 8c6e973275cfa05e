import type { ShaftLine } from '../line/types.js';
import type { Medium } from '../motion/types.js';
import type { Recording } from '../recording/types.js';
import type { Cause, Diagnosis, Finding } from './types.js';

/** How the line stood in one trial. */
export interface TrialConditions {
  readonly propeller: 'fitted' | 'off';
  readonly medium: Medium;
  /** rad, how far a joint or coupling was turned on its shaft against the first trial. Default 0. */
  readonly jointTurned?: number;
  readonly note?: string;
}

export interface LineTrial {
  readonly recording: Recording;
  /** rad/s, shaft speed during the recording. */
  readonly speed: number;
  readonly conditions: TrialConditions;
}

export interface TrialsInput {
  /** Of one line, phone and place, at least one. */
  readonly trials: readonly LineTrial[];
  readonly line?: ShaftLine;
  /** Name of the channel that lies along the shaft, if known. */
  readonly axial?: string;
}

/** How one order grows with speed: amplitude ∝ speed^slope. */
export interface OrderGrowth {
  readonly order: number;
  readonly slope: number;
  readonly standardError: number;
  /** rad/s, ascending. */
  readonly speeds: Float64Array;
  /** `unit` of the channel, peak, all channels of a unit together. */
  readonly amplitudes: Float64Array;
  /** Whether a speed in between shakes more than the next slower and the next faster one, beyond the errors. */
  readonly hump: boolean;
}

/** A line that stays where it is when the speed changes. */
export interface FixedFrequency {
  /** Hz */
  readonly frequency: number;
  /** Trials that show it, and speeds at which. */
  readonly trials: readonly number[];
}

/** What taking the propeller off, turning the joint, or the water did to a cause's own line. */
export interface Behaviour {
  readonly cause: Cause;
  readonly test: 'propeller-off' | 'joint-turned' | 'in-air';
  /** Amplitude with it over the amplitude without. */
  readonly ratio: number;
  /** Relative standard error of the ratio. */
  readonly error: number;
}

export interface TrialsDiagnosis {
  /** Most confident first. */
  readonly findings: readonly Finding[];
  readonly growth: readonly OrderGrowth[];
  readonly fixed: readonly FixedFrequency[];
  readonly behaviours: readonly Behaviour[];
  /** Each trial by itself, in the order given. */
  readonly trials: readonly Diagnosis[];
  /** What the trials together still cannot show, in sentences. */
  readonly limits: readonly string[];
}
