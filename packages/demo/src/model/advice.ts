import type { LadderState, MeasuredResonance } from '@sternline/core';

/** The runs of a balancing, in order: as found, three with the trial mass, and one to check the correction. */
export const BALANCE_RUNS = ['found', 'first', 'second', 'third', 'check'] as const;

export type BalanceRun = (typeof BALANCE_RUNS)[number];

/** The runs that carry the trial mass. */
export const TRIAL_RUNS = ['first', 'second', 'third'] as const;

/** What one run of a balancing read. */
export interface RunReading {
  /** Amplitude of the first order, in the unit of the others. */
  readonly amplitude: number;
  /** Standard error, where a recording gave one. */
  readonly error?: number;
  /** The trial that it was read from; absent where it was written by hand. */
  readonly trialId?: string;
}

/** A balancing of the propeller, as far as it has come. */
export interface BalanceBook {
  /** rad/s, the same in every run. */
  readonly speed?: number;
  /** kg, of what turns in the last bush. */
  readonly rotorMass?: number;
  /** m, at which the trial mass sits and the correction will. */
  readonly radius?: number;
  /** kg, the trial mass as weighed. */
  readonly mass?: number;
  /** rad, where it sits in the three runs, clockwise from blade 1, seen from astern. */
  readonly angles: readonly [number, number, number];
  readonly runs: Readonly<Partial<Record<BalanceRun, RunReading>>>;
  /** The channel of a recording that amplitudes are taken from, the same for every run. */
  readonly channel?: string;
  /** Unit of the amplitudes, where a recording gave it. */
  readonly unit?: string;
  /** Whether mass is put on or taken off. */
  readonly by: 'adding' | 'removing';
}

/** Resonances that were measured, to fit the line to. */
export interface CalibrationBook {
  readonly resonances: readonly MeasuredResonance[];
}

/** What is being found out about a line beside its shape: plain data, kept with it. */
export interface LineAdvice {
  readonly balance?: BalanceBook;
  readonly calibration?: CalibrationBook;
  /** The search for a cause, as far as it has come. */
  readonly ladder?: LadderState;
}

const THIRD = (2 * Math.PI) / 3;

/** A balancing that has not begun. */
export const EMPTY_BALANCE: BalanceBook = { angles: [0, THIRD, 2 * THIRD], runs: {}, by: 'adding' };
