/** What the water does to the propeller. */
export interface PropellerConditions {
  /** Advance coefficient J = Vₐ / (nD), at least 0. Default 0: held at the quay, where the torque is largest. */
  readonly advance?: number;
  /** m/s, speed of the water through the propeller, in place of `advance`: J then falls as the speed rises. */
  readonly waterSpeed?: number;
  /** Developed blade area over disc area, 0.3 to 1.05, for the series; by blade count if absent. */
  readonly areaRatio?: number;
  /** kg/m³. Default 1000, fresh water; the sea has about 1025. */
  readonly waterDensity?: number;
}

export interface RunningOptions extends PropellerConditions {
  /** Share of the supply voltage that the motor is given, 0 to 1. Default 1. */
  readonly throttle?: number;
}

/** Coefficients of a propeller in open water. */
export interface PropellerCoefficients {
  /** K_T = T / (ρ n² D⁴) */
  readonly thrust: number;
  /** K_Q = Q / (ρ n² D⁵) */
  readonly torque: number;
  /** J K_T / (2π K_Q) */
  readonly efficiency: number;
}

/** Where the torque coefficient comes from: the line says it, or the Wageningen B series. */
export type CoefficientSource = 'given' | 'series';

/** Motor, supply and propeller in balance at one throttle. */
export interface RunningPoint {
  /** Share of the supply voltage, 0 to 1. */
  readonly throttle: number;
  /** rad/s */
  readonly speed: number;
  /** V at the motor, averaged over the controller's pulses. */
  readonly voltage: number;
  /** A in the motor. */
  readonly current: number;
  /** A from the supply, averaged over the controller's pulses: throttle times the motor's. */
  readonly supplyCurrent: number;
  /** N·m on the shaft. */
  readonly torque: number;
  /** W of electricity into the motor, which is what the supply gives at its terminals. */
  readonly powerIn: number;
  /** W on the shaft. */
  readonly powerOut: number;
  /** W left in the motor as heat: the windings' I²R and its no-load losses. */
  readonly motorHeat: number;
  /** W left in the supply. */
  readonly supplyHeat: number;
  /** powerOut / powerIn, 0 at rest. */
  readonly efficiency: number;
  readonly propeller: PropellerState;
}

/** How the propeller works at a running point. */
export interface PropellerState {
  /** K_Q */
  readonly torqueCoefficient: number;
  readonly source: CoefficientSource;
  /** J; Infinity where water flows past a propeller at rest. */
  readonly advance: number;
  /** N; of the series alone, since a given torque coefficient does not tell it. */
  readonly thrust?: number;
  /** On the chord at 0.75 of the radius; the series holds at 2·10⁶. Of the series alone. */
  readonly reynoldsNumber?: number;
}

/** From where the motor starts to turn, to full throttle. */
export interface ThrottleRange {
  /** Share of the supply voltage below which the motor's own friction holds it. */
  readonly start: number;
  /** At even steps of throttle from `start` to 1. */
  readonly points: readonly RunningPoint[];
}
