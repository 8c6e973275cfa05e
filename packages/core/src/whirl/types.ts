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

export interface WhirlBoundsOptions extends CriticalSpeedOptions {
  /** m, largest displacement of the whirl. Default: the least radial clearance in a tube, or a tenth of the thinnest shaft. */
  readonly amplitude?: number;
}

/** One critical speed between the two ways in which bushes might hold the slope of the shaft. */
export interface WhirlBound {
  /** rad/s, with every support pinned. */
  readonly lower: number;
  /** rad/s, with bushes as firm as their length and clearance make them. */
  readonly estimate: number;
  /** rad/s, with the slope fixed at every support. */
  readonly upper: number;
  /** Of the estimate. */
  readonly shape: ModeShape;
  /** What each support does in the estimate. */
  readonly supports: readonly BushHold[];
}

/** How firmly one support holds the slope. */
export interface BushHold {
  readonly shaft: number;
  /** Index among the supports of that shaft. */
  readonly support: number;
  /** N·m/rad */
  readonly angularStiffness: number;
}

export interface SpeedFrequencyOptions {
  /** rad/s of the shaft, each at least 0. */
  readonly speeds: ArrayLike<number>;
  /** How many, lowest first. Default 4. */
  readonly modes?: number;
}

/** Whirl frequencies against shaft speed: `forward[mode][i]` at `speeds[i]`. */
export interface SpeedFrequencyMap {
  /** rad/s of the shaft. */
  readonly speeds: Float64Array;
  /** rad/s, one row for each mode. */
  readonly forward: readonly Float64Array[];
  /** rad/s, one row for each mode; frequencies of the backward whirl, greater than 0. */
  readonly backward: readonly Float64Array[];
}

/**
 * Unbalance of the discs: first order, forward. A disc without an `unbalance` has at each speed what balance grade G16 leaves it
 * there, m·16 mm/s/Ω, as in `lineLoads`.
 */
export interface UnbalanceExcitation {
  readonly kind: 'unbalance';
  /** rad about the shaft, one for each disc of the line from the motor end; 0 where absent. */
  readonly phases?: ArrayLike<number>;
}

/** Bent shafts, each with its `runout`: first order, forward. */
export interface BowExcitation {
  readonly kind: 'bow';
  /** rad about the shaft, one for each shaft; 0 where absent. */
  readonly phases?: ArrayLike<number>;
}

/** Couples of the universal joints: second order. */
export interface JointExcitation {
  readonly kind: 'joints';
  /** N·m, mean torque of the line. */
  readonly torque: number;
  /** rad/s, speed of that torque, which then grows with the square of the speed; absent, it is the same at all speeds. */
  readonly torqueSpeed?: number;
  /** Default 'forward', the way in which a joint's couple turns. */
  readonly whirl?: Whirl;
}

/** A force of constant size that turns. */
export interface ForceExcitation {
  readonly kind: 'force';
  readonly shaft: number;
  /** m from the motor end of that shaft. */
  readonly at: number;
  /** N */
  readonly force: number;
  readonly order: number;
  /** Default 'forward'. */
  readonly whirl?: Whirl;
  /** rad. Default 0. */
  readonly phase?: number;
}

export type WhirlExcitation = UnbalanceExcitation | BowExcitation | JointExcitation | ForceExcitation;

/** What takes energy out of a whirl; all of it stands still in the hull. */
export interface WhirlDamping {
  /** Share of critical of each of the lowest eight modes, above 0 and below 1. Default 0.02. */
  readonly modal?: number;
  /** N·s/m of each support with a radial stiffness. Default 0. */
  readonly bushes?: number;
}

export interface WhirlResponseOptions {
  /** rad/s of the shaft, each at least 0. */
  readonly speeds: ArrayLike<number>;
  readonly damping?: WhirlDamping;
  /** Default: unbalance and bow, all phases 0. */
  readonly excitations?: readonly WhirlExcitation[];
}

/** Steady whirl of a line through a range of speeds. */
export interface WhirlResponse {
  /** rad/s of the shaft. */
  readonly speeds: Float64Array;
  /** Index of the shaft that each node lies on. */
  readonly shaft: Int32Array;
  /** m from the motor end of that shaft. */
  readonly at: Float64Array;
  /** m from the motor end of the line along its developed length. */
  readonly station: Float64Array;
  /** One for each order and way of whirling. */
  readonly orders: readonly WhirlOrder[];
  /** m, at each speed the largest radius that each node reaches: all orders added as if they peaked together. */
  readonly radius: readonly Float64Array[];
  /** One for each shaft with a tube. */
  readonly tubes: readonly TubeDisplacement[];
}

export interface WhirlOrder {
  readonly order: number;
  readonly whirl: Whirl;
  /** m, at each speed the radius of the circle that each node runs on. */
  readonly amplitude: readonly Float64Array[];
  /** rad, at each speed by how much each node leads the zero of the phases, in the sense of its whirl. */
  readonly phase: readonly Float64Array[];
}

export interface TubeDisplacement {
  readonly shaft: number;
  /** m, radial, between shaft and tube. */
  readonly clearance: number;
  /** m, at each speed the largest radius between the outermost supports of the shaft. */
  readonly radius: Float64Array;
}

export interface ContactSpeedOptions {
  /** rad/s, up to which to look. */
  readonly to: number;
  readonly damping?: WhirlDamping;
  /** Default: unbalance and bow, all phases 0. */
  readonly excitations?: readonly WhirlExcitation[];
}

/** Where a line touches its tubes. */
export interface ContactSpeed {
  /** rad/s, the lowest speed at which a shaft touches its tube; Infinity where none does, or where nothing is `driven`. */
  readonly speed: number;
  /** Whether the excitations push anywhere on this line. If not there is no whirl to judge a clearance by. */
  readonly driven: boolean;
  readonly tubes: readonly TubeContact[];
}

export interface TubeContact {
  readonly shaft: number;
  /** m, radial. */
  readonly clearance: number;
  /** rad/s, the speeds at which the whirl would be wider than the tube. */
  readonly bands: readonly { readonly from: number; readonly to: number }[];
}

export interface ModeStiffeningOptions {
  /** Excitation order. Default 1. */
  readonly order?: number;
  /** Default 'forward'. */
  readonly whirl?: Whirl;
  /** 1 for the lowest. Default 1. */
  readonly mode?: number;
}

/** Where a whirl mode keeps its energy. All strain shares add up to 1, and so do all kinetic shares. */
export interface ModeStiffening {
  /** rad/s, the critical speed of the mode. */
  readonly speed: number;
  readonly shafts: readonly ShaftShare[];
  readonly supports: readonly SupportShare[];
  readonly joints: readonly JointShare[];
  readonly discs: readonly DiscShare[];
}

export interface ShaftShare {
  readonly shaft: number;
  readonly strain: number;
  readonly kinetic: number;
  /** The same, piece by piece from the motor end. */
  readonly segments: readonly SegmentShare[];
}

export interface SegmentShare {
  /** m from the motor end of the shaft. */
  readonly from: number;
  /** m */
  readonly to: number;
  readonly strain: number;
  readonly kinetic: number;
}

export interface SupportShare {
  readonly shaft: number;
  /** Index among the supports of that shaft. */
  readonly support: number;
  /** Of its radial and angular stiffness; 0 where it is rigid. */
  readonly strain: number;
  /** rad/(N·m): share by which the speed rises for each N·m/rad with which the support were to hold the slope. */
  readonly slopeGain: number;
}

export interface JointShare {
  readonly joint: number;
  /** Of its bending stiffness. */
  readonly strain: number;
  /** Of its mass. */
  readonly kinetic: number;
}

export interface DiscShare {
  readonly shaft: number;
  /** Index among the discs of that shaft. */
  readonly disc: number;
  /** Of its mass and its inertias together. */
  readonly kinetic: number;
  /** Of its mass alone. */
  readonly mass: number;
  /** Of its inertias, less than 0 where its spin stiffens the shaft. */
  readonly inertia: number;
}
