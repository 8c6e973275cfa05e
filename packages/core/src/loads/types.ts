import type { Lining } from '../line/linings.js';
import type { ShaftStress } from '../twist/types.js';

/** One couple that a universal joint puts on a shaft: a part that stands still and a part that turns twice a turn. */
export interface CoupleParts {
  /** N·m, the part that stands still in the hull. */
  readonly mean: number;
  /** N·m, amplitude of order 2. */
  readonly second: number;
  /** N·m, the most within a turn. */
  readonly largest: number;
}

/** Secondary couples of one joint, square to its two shafts. */
export interface JointCouple {
  /** Index of the joint. */
  readonly joint: number;
  /** rad */
  readonly angle: number;
  /** On the shaft ahead, the driving one. */
  readonly driving: CoupleParts;
  /** On the shaft behind, the driven one. */
  readonly driven: CoupleParts;
}

/** Force on one support. */
export interface SupportReaction {
  readonly shaft: number;
  /** Index among the supports of that shaft. */
  readonly support: number;
  /** m from the motor end of the shaft. */
  readonly at: number;
  /** N, that stands still: weight and the mean couples of the joints. */
  readonly steady: number;
  /** N, of the weight alone. */
  readonly weight: number;
  /** N, amplitude of order 1: unbalance and bow, every one added as if all stood in one plane. */
  readonly first: number;
  /** N, amplitude of order 2: the couples of the joints. */
  readonly second: number;
  /** N, the most that these can add to. */
  readonly largest: number;
}

/** Bending of one shaft where it is worst. */
export interface ShaftBending {
  /** N·m that a fibre of the turning shaft feels as alternating: all that stands still in the hull, and order 2. */
  readonly alternating: number;
  /** N·m that turns with the shaft: unbalance and bow. */
  readonly steady: number;
}

export interface LineReactions {
  /** Shaft after shaft, in the order in which the line lists them. */
  readonly supports: readonly SupportReaction[];
  /** One for each shaft. */
  readonly bending: readonly ShaftBending[];
}

/** A bush at work. */
export interface BushLoad {
  /** m/s at the surface of the shaft. */
  readonly rubbingSpeed: number;
  /** Pa, F / (d L); absent without a length. */
  readonly pressure?: number;
  /** Pa·m/s; absent without a length. */
  readonly pressureSpeed?: number;
  /** Of the catalogue; absent where the support names none that it has. */
  readonly lining?: Lining;
  /** Each figure over its limit, above 1 too much; absent where figure or limit is. */
  readonly shares: {
    readonly pressure?: number;
    readonly speed?: number;
    readonly pressureSpeed?: number;
  };
  /** Whether every share that is known is at most 1; `unknown` where none is. */
  readonly verdict: 'within' | 'beyond' | 'unknown' | 'rolling';
}

/** A kind of seal against the speed of the surface that it rubs on. */
export interface SealSpeed {
  readonly name: string;
  /** m/s */
  readonly limit: number;
  readonly within: boolean;
  readonly source: string;
}

/** A length of shaft between supports, or beyond the last. */
export interface BearingSpan {
  readonly shaft: number;
  readonly kind: 'span' | 'overhang';
  /** m from the motor end of the shaft. */
  readonly from: number;
  readonly to: number;
  /** m */
  readonly length: number;
  /** Length over outer diameter. */
  readonly diameters: number;
  /** m, the longest span of a class rule for merchant ships at this speed, as context; of spans alone. */
  readonly classLength?: number;
  /** Against 20 to 40 diameters of full-size practice; of an overhang, against one diameter. */
  readonly verdict: 'short' | 'usual' | 'long';
}

/** What set screws hold a hub with. */
export interface SetScrewHolding {
  /** N along the shaft at which it creeps by 0.25 mm. */
  readonly axial: number;
  /** N·m at which it does so round the shaft. */
  readonly torque: number;
  /** N·m of seating torque counted with. */
  readonly seatingTorque: number;
  /** N·m to seat this size with. */
  readonly recommendedTorque: number;
  /** Whether the size is one of the table, lies between two of them, or beyond its ends. */
  readonly basis: 'table' | 'interpolated' | 'extrapolated';
  /** What the table's value was multiplied with, and why. */
  readonly factors: readonly { readonly name: string; readonly factor: number }[];
}

/** A fastener that would hold where the one there does not. */
export interface HoldingOffer {
  readonly size: number;
  readonly count: number;
  readonly flat: boolean;
  readonly threadLock: boolean;
  /** N·m */
  readonly seatingTorque: number;
  /** Holding torque over peak torque. */
  readonly factor: number;
}

/** Whether a joint stays on its shaft. */
export interface FastenerCheck {
  /** N·m, the mean torque with its swing. */
  readonly peakTorque: number;
  readonly holding: SetScrewHolding;
  /** Holding torque over peak torque. */
  readonly factor: number;
  /** What the factor has to be. */
  readonly required: number;
  readonly holds: boolean;
  /** The least change that would hold; absent where it holds, or where no set screw in stock would. */
  readonly offer?: HoldingOffer;
}

/** Safety of a shaft against fatigue and yield where its loads are worst. */
export interface FatigueSafety {
  /** Factor by the DE-Goodman criterion; Infinity without load. */
  readonly fatigueFactor: number;
  /** Factor of yield over the largest von Mises stress, notch left out. */
  readonly yieldFactor: number;
  /** Pa, of the part: size and surface counted. */
  readonly enduranceLimit: number;
  /** Pa */
  readonly tensileStrength: number;
  /** Where the strengths come from. */
  readonly source: string;
}

export interface ShaftLoad {
  readonly shaft: number;
  readonly bending: ShaftBending;
  /** N·m */
  readonly torque: number;
  /** N·m, amplitude about the mean. */
  readonly torqueSwing: number;
  /** At the peak of all loads together. */
  readonly stress: ShaftStress;
  readonly safety: FatigueSafety;
}

export interface SupportLoad extends SupportReaction {
  readonly bush: BushLoad;
}

/** A figure against what a maker allows. */
export interface Allowance {
  readonly value: number;
  readonly limit: number;
  /** limit / value, below 1 too much. */
  readonly factor: number;
  readonly within: boolean;
}

export interface JointLoad {
  readonly joint: number;
  readonly couple: JointCouple;
  /** N·m, amplitude about the mean. */
  readonly torqueSwing: number;
  /** N·m, mean and swing. */
  readonly peakTorque: number;
  /** Whether the swing exceeds the mean, so that the pins part twice a turn or oftener. */
  readonly rattles: boolean;
  /** Against `ratedTorque`; absent without one. */
  readonly rated?: Allowance;
  /** Against `maxAngle`; absent without one. */
  readonly bend?: Allowance;
  /** Of set screws with a size; absent for any other fastener. */
  readonly fastener?: FastenerCheck;
}

/** Every load of a line at one speed. */
export interface LineLoads {
  /** rad/s */
  readonly speed: number;
  /** N·m, mean. */
  readonly torque: number;
  readonly joints: readonly JointLoad[];
  readonly supports: readonly SupportLoad[];
  readonly shafts: readonly ShaftLoad[];
  readonly spans: readonly BearingSpan[];
  /** Kinds of seal on the last shaft. */
  readonly seals: readonly SealSpeed[];
}
