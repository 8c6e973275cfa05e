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
