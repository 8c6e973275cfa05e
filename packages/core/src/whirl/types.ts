export type Whirl = 'forward' | 'backward';

/** Where a mode moves: one entry per mesh node, in order from the motor end. */
export interface ModeShape {
  /** Index of the shaft that each node lies on. */
  readonly shaft: Int32Array;
  /** m from the motor end of that shaft. */
  readonly at: Float64Array;
  /** m from the motor end of the line along its developed length. */
  readonly station: Float64Array;
  /** Sideways displacement, scaled so that the largest is 1. */
  readonly displacement: Float64Array;
  /** Slope in 1/m on the same scale; it jumps at a universal joint. */
  readonly slope: Float64Array;
}

export interface CriticalSpeed {
  /** rad/s, shaft speed at which the excitation order meets the whirl mode. */
  readonly speed: number;
  readonly shape: ModeShape;
}

export interface CriticalSpeedOptions {
  /** Excitation order: 1 for unbalance, 2 for universal joints at an angle, the blade count for blade rate. Default 1. */
  readonly order?: number;
  /** Default 'forward'. */
  readonly whirl?: Whirl;
  /** How many, lowest first. Default 4. */
  readonly count?: number;
}

/** What one excitation meets, of several. */
export interface LineWhirl {
  readonly order: number;
  readonly whirl: Whirl;
  /** Ascending. */
  readonly modes: readonly CriticalSpeed[];
}
