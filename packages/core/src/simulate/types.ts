import type { Recording } from '../recording/types.js';

/** A point of a speed profile; speed runs straight between points and stays level outside them. */
export interface SpeedPoint {
  /** s */
  readonly time: number;
  /** rad/s */
  readonly speed: number;
}

/** A hull, bracket or panel that rings at its own frequency. */
export interface Resonance {
  /** Hz */
  readonly frequency: number;
  /** Share of critical damping. */
  readonly damping: number;
  /** How far its ring is felt at the phone, against the rigid motion of the hull. */
  readonly gain: number;
}

/** A sine that does not follow the shaft: mains hum, another machine. */
export interface Tone {
  /** Hz */
  readonly frequency: number;
  /** m/s² peak, or full scale for sound. */
  readonly amplitude: number;
}

export interface SimulationOptions {
  /** rad/s, or a profile. */
  readonly speed: number | readonly SpeedPoint[];
  /** s */
  readonly duration: number;
  /** Hz, of the phone. */
  readonly sampleRate: number;
  readonly seed: number;
  /** Default 'motion'. */
  readonly kind?: 'motion' | 'sound';
  readonly name?: string;
  /** kg, what the line shakes. Default 6. */
  readonly hullMass?: number;
  /** N·m of the propeller; default from its torque coefficient, K_Q ρ n² D⁵. */
  readonly torque?: number;
  /** kg·m, added to what the discs carry. */
  readonly unbalance?: number;
  /** Default 'fitted'. */
  readonly propeller?: 'fitted' | 'off';
  readonly resonances?: readonly Resonance[];
  readonly tones?: readonly Tone[];
  /** Standard deviation of white noise; default 0.03 m/s², or 0.002 of full scale. */
  readonly noise?: number;
  /** m/s², what the phone reads at rest on x, y, z. Default (0, 0, 9.80665); ignored for sound. */
  readonly gravity?: readonly [number, number, number];
  /** Step to which values are rounded, as phones do; default 0, not rounded. */
  readonly resolution?: number;
  /** s, standard deviation of the time stamps. Default 0. */
  readonly stampJitter?: number;
  /** s, step to which the stamps are rounded. Default 0, not rounded. */
  readonly stampStep?: number;
}

/** What was put in, for checking what is read out. */
export interface SimulationTruth {
  /** Hz, at the middle of the recording. */
  readonly shaftFrequency: number;
  /** At the middle of the recording, on the channel that shows each most; peak. */
  readonly orders: readonly { readonly order: number; readonly amplitude: number }[];
}

export interface SimulatedTrial {
  readonly recording: Recording;
  /** s, what the phone would log beside each sample. */
  readonly stamps: Float64Array;
  readonly truth: SimulationTruth;
}
