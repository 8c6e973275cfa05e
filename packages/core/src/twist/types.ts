/** Stress at the surface of a round shaft. */
export interface ShaftStress {
  /** Pa, of torque: T r / J. */
  readonly shear: number;
  /** Pa, of bending: M r / I. */
  readonly bending: number;
  /** Pa, √(σ² + 3τ²). */
  readonly vonMises: number;
  /** Yield over von Mises stress; Infinity without load. */
  readonly yieldFactor: number;
}

/** How far a line winds up under a steady torque. */
export interface LineTwist {
  /** rad, from the motor's end to that of the propeller, joints included. */
  readonly total: number;
  readonly shafts: readonly ShaftTwist[];
  /** rad over each joint; 0 where it is rigid in twist. */
  readonly joints: readonly number[];
}

export interface ShaftTwist {
  /** rad over the length of the shaft. */
  readonly angle: number;
  /** N·m/rad, GJ / L. */
  readonly stiffness: number;
  /** Pa at the surface. */
  readonly shear: number;
}

/** A place on the line. */
export interface LinePlace {
  readonly shaft: number;
  /** m from the motor end of that shaft. */
  readonly at: number;
  /** m from the motor end of the line along its developed length. */
  readonly station: number;
}

/** Places along the line, in order from the motor end; each joint is two, one on either shaft. */
export interface LinePlaces {
  readonly shaft: Int32Array;
  readonly at: Float64Array;
  readonly station: Float64Array;
}

/** One way in which the line swings in twist. */
export interface TorsionalMode {
  /** rad/s */
  readonly frequency: number;
  readonly shape: TorsionalShape;
  /** Where the line stands still in this mode; the torque is large there, and most of the mode's strain. */
  readonly nodes: readonly LinePlace[];
}

export interface TorsionalShape extends LinePlaces {
  /** Angle at each place, scaled so that the largest is 1. */
  readonly angle: Float64Array;
}

/** What drives an order: the universal joints, the blades, or what the caller asked for. */
export type CriticalSource = 'joints' | 'blades' | 'asked';

/** A shaft speed at which an order meets a torsional mode. */
export interface TorsionalCritical {
  readonly order: number;
  readonly source: CriticalSource;
  /** 1 for the lowest mode. */
  readonly mode: number;
  /** rad/s of the shaft. */
  readonly speed: number;
  /** rad/s of the mode. */
  readonly frequency: number;
}

export interface TorsionalResponseOptions {
  /** rad/s of the shaft. */
  readonly speed: number;
  /** N·m, the mean that the propeller takes; without it the blades push nothing. */
  readonly torque?: number;
  /** Amplitude of the blades' torque as a share of the mean. Default 0.1. */
  readonly bladeShare?: number;
  /** Share of critical damping of every mode. Default 0.02. */
  readonly damping?: number;
}

/** How the line swings in twist at one speed, order by order. */
export interface TorsionalResponse extends LinePlaces {
  readonly orders: readonly TorsionalOrder[];
  /** N·m, the most that the torque in each shaft departs from its mean: the amplitudes of all orders together. */
  readonly shaftSwing: Float64Array;
  /** N·m, the same at each joint. */
  readonly jointSwing: Float64Array;
}

export interface TorsionalOrder {
  readonly order: number;
  readonly source: 'joints' | 'blades';
  /** rad, amplitude at each place, the forced motion of the joints included. */
  readonly angle: Float64Array;
  /** N·m, amplitude just after each place. */
  readonly torque: Float64Array;
}
