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
