/** One Fourier order of a periodic quantity: `order` counts cycles in a turn of the input shaft. */
export interface OrderAmplitude {
  readonly order: number;
  readonly amplitude: number;
}

/** Departure of the output speed from the input speed within one turn, all as ratios to the input speed. */
export interface SpeedFluctuation {
  readonly min: number;
  readonly max: number;
  /** max − min */
  readonly degree: number;
  /** Orders 2, 4, 6, 8 of the speed ratio over the input angle. */
  readonly orders: readonly OrderAmplitude[];
  /** rad: orders 2, 4, 6, 8 of the lead of the output angle over even turning. */
  readonly angleOrders: readonly OrderAmplitude[];
}

/** The single universal joint that moves its output as a whole chain does. */
export interface EquivalentJoint {
  /** rad, 0 to below π/2. */
  readonly angle: number;
  /** Cosine of the angle: the least speed ratio. */
  readonly cosine: number;
  /** rad, −π/2 to π/2: an input angle at which the output turns slowest. */
  readonly phase: number;
}

/** Where the propeller turns: it carries water along, or it does not. */
export type Medium = 'air' | 'water';

/** The greatest angular acceleration of one shaft while the first shaft turns evenly. */
export interface ShaftAcceleration {
  /** Index of the shaft. */
  readonly shaft: number;
  /** rad, of the single joint that moves this shaft as the chain before it does. */
  readonly equivalentAngle: number;
  /** rad/s², as great forward as backward. */
  readonly peak: number;
  /** rad, 0 to below π: an input angle at which the shaft gains speed fastest; it loses fastest at twice the phase less this. */
  readonly inputAngle: number;
}

/** What one universal joint adds by itself, were its driving shaft to turn evenly. */
export interface JointAcceleration {
  /** Index of the joint. */
  readonly joint: number;
  /** rad */
  readonly angle: number;
  /** rad/s² */
  readonly peak: number;
}

/** Angular acceleration of every shaft of a line at one speed of the first. */
export interface AngularAcceleration {
  /** rad, of the single joint that moves the last shaft as the whole line does. */
  readonly equivalentAngle: number;
  /** rad/s², of the last shaft. */
  readonly peak: number;
  /** rad, 0 to below π: an input angle at which the last shaft gains speed fastest. */
  readonly inputAngle: number;
  /** rad/s²: orders 2, 4, 6, 8 of the acceleration of the last shaft. */
  readonly orders: readonly OrderAmplitude[];
  /** From the motor end; the first shaft has none. */
  readonly shafts: readonly ShaftAcceleration[];
  /** The universal joints, from the motor end. */
  readonly joints: readonly JointAcceleration[];
}

/** Range, within a turn, of the torque that leaves a joint over the torque that enters. */
export interface TorqueRatio {
  /** Index of the joint. */
  readonly joint: number;
  /** Torque behind the joint over torque before it: least and greatest. */
  readonly least: number;
  readonly greatest: number;
  /** Torque behind the joint over the torque of the first shaft: least and greatest. */
  readonly leastOfMotor: number;
  readonly greatestOfMotor: number;
}

/** Speed times angle of one universal joint against what plain pins stand. */
export interface SpeedAngle {
  /** Index of the joint. */
  readonly joint: number;
  /** rad²/s */
  readonly product: number;
  /** rad²/s, `PLAIN_PIN_LIMIT`. */
  readonly limit: number;
  /** product / limit; more than 1 is beyond what plain pins stand. */
  readonly share: number;
}

/** Torque that turning evenly takes: constant + coefficient × speed². */
export interface TorqueLaw {
  /** N·m: friction of bushes and seal. Absent is none. */
  readonly constant?: number;
  /** N·m·s²: K_Q ρ D⁵ / 4π² of a propeller in water. Absent is none. */
  readonly coefficient?: number;
}

/** When the pins of a joint change sides twice a turn. */
export interface Chatter {
  /** `above` the speed; at every speed; or at none. */
  readonly chatters: 'above' | 'always' | 'never';
  /** rad/s at which it starts: 0 for `always`, Infinity for `never`. */
  readonly speed: number;
  /** kg·m², of all that turns behind the joint. */
  readonly inertia: number;
  /** kg·m²: peak of the torque that the fluctuation forces, over speed squared. */
  readonly inertiaTorque: number;
}

/** A place of a splined yoke, in whole teeth from where it stands. */
export interface ToothPlace {
  /** Teeth to turn the yoke at the propeller end by, signed as `yokeTwist`. */
  readonly teeth: number;
  /** rad, the yoke twist that results. */
  readonly yokeTwist: number;
  /** max − min of the speed ratio of the line there, the other shafts at their best. */
  readonly degree: number;
  /** The same, one tooth further off on the worse side. */
  readonly degreeOneToothOff: number;
}

/** What the yokes of one inner shaft have to do with each other. */
export interface ShaftPhase {
  /** Index of the shaft whose `yokeTwist` is to be set; a rigid piece that follows it counts as part of it. */
  readonly shaft: number;
  /** rad, −π to π: about the shaft, from the normal of the bend plane at its motor end to that at its propeller end. */
  readonly planeAngle: number;
  /** rad, over −π/2 to π/2: the yoke twist that lets the line turn most evenly; half a turn more is the same. */
  readonly best: number;
  /** rad, over −π/2 to π/2: by how much to turn the yoke at its propeller end from where it stands. */
  readonly turn: number;
  /** The sense of that turn as seen looking aft from the motor; positive twists go from port up, anticlockwise so seen. */
  readonly sense: 'clockwise' | 'anticlockwise' | 'none';
  /** max − min of the speed ratio of the line with this shaft alone 1° off its best, on the worse side. */
  readonly degreeOneDegreeOff: number;
  /** Where the yoke sits on a spline. */
  readonly spline?: ToothPlace;
}

/** Phase of the yokes of a line. */
export interface YokePhase {
  /** max − min of the speed ratio of the line as it is. */
  readonly degree: number;
  /** The same with every inner shaft's yokes in line, at 0. */
  readonly degreeAtZero: number;
  /** The same with every inner shaft at its best. */
  readonly degreeAtBest: number;
  /** rad, of the single joint that is left at best; 0 where the line cancels. */
  readonly equivalentAngleAtBest: number;
  /** Every inner shaft between two universal joints, from the motor end; none where there are fewer than two. */
  readonly shafts: readonly ShaftPhase[];
}
