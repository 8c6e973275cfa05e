import type { Vector3 } from '../numerics/vector.js';

/** A measured length, m, and the most that it may be off either way, m. */
export interface Measure {
  readonly value: number;
  readonly tolerance: number;
}

/** Where an axis was measured. */
export interface AxisStation {
  /** m aft along the keel line, from a datum that all stations share. */
  readonly at: Measure;
  /** Height of the axis above the keel line. */
  readonly height?: Measure;
  /** Offset of the axis from the centre line, positive to port. */
  readonly offset?: Measure;
}

/** What a ruler says of a shaft line. */
export interface AxisMeasures {
  /** Two stations of the motor's axis, in any order. */
  readonly motor: readonly [AxisStation, AxisStation];
  /** Two stations of the stern tube's axis, in any order. */
  readonly tube: readonly [AxisStation, AxisStation];
  /** Stations of the two joint centres of a two-joint line; absent for one joint where the axes meet. */
  readonly joints?: {
    /** Where along the keel the centre of the first joint lies, on the motor's axis. */
    readonly motor: Measure;
    /** Where along the keel the centre of the second joint lies, on the tube's axis. */
    readonly tube: Measure;
  };
}

/** A derived figure and how far the tolerances of the measures reach it. */
export interface Estimate {
  readonly value: number;
  /** Root of the sum of squares of what each tolerance does by itself: the likely reach. */
  readonly tolerance: number;
  /** Least and greatest with every measure anywhere within its tolerance. */
  readonly least: number;
  readonly greatest: number;
}

/** A straight line in space, pointing aft. */
export interface Axis {
  /** m; x aft along the keel, y to port, z up. */
  readonly point: Vector3;
  /** Of length 1. */
  readonly direction: Vector3;
}

/** The direction of a shaft with its tolerances, and one point of its axis. */
export interface MeasuredAxis extends Axis {
  /** rad, positive up. */
  readonly elevation: Estimate;
  /** rad, positive to port. */
  readonly plan: Estimate;
}

/** What was not measured. */
export interface Assumption {
  readonly code:
    | 'heights-missing'
    | 'offsets-missing'
    | 'motor-heights-missing'
    | 'motor-offsets-missing'
    | 'tube-heights-missing'
    | 'tube-offsets-missing';
  readonly sentence: string;
}

/** Where the axes of a one-joint line come nearest to each other. */
export interface Meeting {
  /** m, midway between the two axes; absent where they are parallel. */
  readonly centre?: Vector3;
  /** m aft along the keel; absent where they are parallel. */
  readonly at?: Estimate;
  /** m, from axis to axis. A universal joint wants none. */
  readonly gap: Estimate;
}

/** The shaft between the joints of a two-joint line. */
export interface IntermediateShaft extends MeasuredAxis {
  /** m, between the joint centres. */
  readonly length: Estimate;
}

/** Axes, joint centres and joint angles of a measured line. */
export interface LineAxes {
  readonly motor: MeasuredAxis;
  readonly tube: MeasuredAxis;
  /** One joint: where the axes meet. */
  readonly meeting?: Meeting;
  /** Two joints: the shaft between them. */
  readonly intermediate?: IntermediateShaft;
  /** m, from the motor end: one, two, or none where the axes of a one-joint line are parallel. */
  readonly jointCentres: readonly Vector3[];
  /** rad, from the motor end. */
  readonly jointAngles: readonly Estimate[];
  readonly assumed: readonly Assumption[];
}

/** A flat surface, or the flat that touches a curved one where the axis leaves it. */
export type Surface =
  | {
      /** m, a point of it. */
      readonly through: Vector3;
      /** Square to it, of any length, either way. */
      readonly normal: Vector3;
    }
  | {
      readonly through: Vector3;
      /** rad, of its line in the side view: positive where it rises going aft. */
      readonly riseAft: number;
      /** rad, of its line in the section: positive where it rises to port. */
      readonly riseToPort: number;
    };

/** Where an axis goes through a surface. */
export interface AxisMark {
  /** m */
  readonly point: Vector3;
  /** m above the keel line. */
  readonly height: number;
  /** m from the centre line, positive to port. */
  readonly offset: number;
  /** m aft along the keel. */
  readonly at: number;
  /** rad, 0 to below π/2: between the axis and the normal of the surface. */
  readonly incidence: number;
}

/** The hole that a round tube makes in a flat surface. */
export interface ExitEllipse extends AxisMark {
  /** m, half of the length of the hole. */
  readonly semiMajor: number;
  /** m, half of its width: the radius of the tube. */
  readonly semiMinor: number;
  /** Along the length of the hole, in the surface, of length 1, pointing aft (to port, up, where it points neither). */
  readonly majorDirection: Vector3;
  /** Along its width, of length 1. */
  readonly minorDirection: Vector3;
  /** m², of the opening. */
  readonly area: number;
  /** m: both ends of the length, then both ends of the width. */
  readonly ends: readonly [Vector3, Vector3, Vector3, Vector3];
}
