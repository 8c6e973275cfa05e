/**
 * The shaft line as plain data: one shape for every computation, for the project file and for the page.
 * Every quantity is SI: metre, kilogram, second, radian, newton, pascal.
 *
 * Frame: x aft along the keel, y to port, z up. A shaft points along
 * (cos ε cos ψ, cos ε sin ψ, sin ε) with ε its `elevation` and ψ its `plan` angle,
 * and rotation is positive about that direction.
 */
export interface ShaftLine {
  readonly name: string;
  /** Motor end first; one more than there are joints. */
  readonly shafts: readonly Shaft[];
  /** `joints[i]` ties `shafts[i]` to `shafts[i + 1]`. */
  readonly joints: readonly Joint[];
  readonly motor?: Motor;
  readonly supply?: Supply;
  readonly propeller?: Propeller;
}

/** One straight piece of shaft. */
export interface Shaft {
  readonly name: string;
  /** m */
  readonly length: number;
  /** m */
  readonly outerDiameter: number;
  /** m; 0 is a solid shaft. */
  readonly innerDiameter: number;
  readonly material: Material;
  /** rad, positive up. */
  readonly elevation: number;
  /** rad, positive to port. */
  readonly plan: number;
  /** rad, from the driven pin at the motor end to the driving pin at the propeller end; 0 is yokes in line. */
  readonly yokeTwist: number;
  readonly supports: readonly Support[];
  readonly discs: readonly Disc[];
  /** m, total indicated reading at mid-span. */
  readonly runout?: number;
  /** m, inside diameter of the tube the shaft turns in. */
  readonly tubeBore?: number;
}

/** A bush or a bearing. */
export interface Support {
  /** m from the motor end of its shaft. */
  readonly at: number;
  /** N/m; absent is rigid. */
  readonly radialStiffness?: number;
  /** Whether it also holds the slope of the shaft; absent is no. */
  readonly fixesSlope?: boolean;
  /** N·m/rad, how firmly it resists the slope of the shaft; absent is not at all. */
  readonly angularStiffness?: number;
  /** m, along the shaft. */
  readonly length?: number;
  /** m */
  readonly bore?: number;
  readonly lining?: string;
}

/** A rigid disc on a shaft: propeller, flywheel, collar. */
export interface Disc {
  readonly name: string;
  /** m from the motor end of its shaft. */
  readonly at: number;
  /** kg, dry. */
  readonly mass: number;
  /** kg·m² about the shaft, dry. */
  readonly polarInertia: number;
  /** kg·m² about a diameter, dry. */
  readonly diametralInertia: number;
  /** kg·m, mass times eccentricity. */
  readonly unbalance?: number;
}

export type JointKind = 'universal' | 'rigid' | 'flexible';

/** What ties two shafts together. Its mass sits at the joint centre. */
export interface Joint {
  readonly kind: JointKind;
  /** kg */
  readonly mass: number;
  /** kg·m² about the shaft. */
  readonly polarInertia: number;
  /** N·m/rad; absent is rigid in twist. */
  readonly torsionalStiffness?: number;
  /** N·m/rad, of a flexible joint; absent is free to bend, like a hinge. */
  readonly bendingStiffness?: number;
  /** rad, the largest angle its maker allows. */
  readonly maxAngle?: number;
  /** N·m */
  readonly ratedTorque?: number;
  readonly fastener?: Fastener;
}

/** What holds a joint on its shaft. */
export interface Fastener {
  readonly kind: 'set-screw' | 'clamp' | 'pin' | 'thread' | 'bond';
  /** m, nominal thread diameter of a set screw. */
  readonly size?: number;
  readonly count?: number;
  /** Whether the shaft has a flat under the screw. */
  readonly flat?: boolean;
  readonly threadLock?: boolean;
  /** N·m */
  readonly seatingTorque?: number;
}

export interface Motor {
  /** rad/s per volt. */
  readonly speedConstant: number;
  /** Ω */
  readonly resistance: number;
  /** A */
  readonly noLoadCurrent: number;
  /** kg·m² */
  readonly rotorInertia: number;
  /** Magnet poles, counted singly. */
  readonly poles?: number;
}

export interface Supply {
  /** V */
  readonly voltage: number;
  /** Ω */
  readonly resistance: number;
}

/** Hydrodynamics only: the mass of the propeller is a {@link Disc} of the last shaft. */
export interface Propeller {
  readonly blades: number;
  /** m */
  readonly diameter: number;
  /** m, advance in one turn without slip. */
  readonly pitch: number;
  /** K_Q = Q / (ρ n² D⁵), n in turns a second. */
  readonly torqueCoefficient?: number;
  /** Mass with the water it carries, over its dry mass. */
  readonly wetMassFactor?: number;
  /** Inertia with the water it carries, over its dry inertia. */
  readonly wetInertiaFactor?: number;
}

export interface Material {
  readonly name: string;
  /** Pa */
  readonly youngsModulus: number;
  /** Pa */
  readonly shearModulus: number;
  /** kg/m³ */
  readonly density: number;
  /** Pa */
  readonly yieldStrength: number;
}
