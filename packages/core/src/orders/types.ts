import type { ChannelUnit, Recording } from '../recording/types.js';

/** One order of shaft speed on one channel. */
export interface OrderOnChannel {
  readonly channel: string;
  readonly unit: ChannelUnit;
  /** Peak amplitude, unit, the share of noise taken out. */
  readonly amplitude: number;
  /** Standard error of the amplitude, unit. */
  readonly amplitudeError: number;
  /** Amplitude that noise alone would show here, unit. */
  readonly floor: number;
  /** Whether a line stands here that neither noise nor a stronger line beside it explains. */
  readonly seen: boolean;
}

/** One order of shaft speed as a recording shows it. */
export interface OrderMeasurement {
  readonly order: number;
  /** Hz, order × shaft frequency. */
  readonly frequency: number;
  /** Hz, where the sampling shows it. */
  readonly apparentFrequency: number;
  /** Whether it lies beyond half the sampling rate: shown elsewhere, and its amplitude not to be relied on. */
  readonly folded: boolean;
  /** Whether its apparent frequency is clear of 0 and of half the rate, so that it could be seen at all. */
  readonly reachable: boolean;
  /** The other orders asked for that fall on the same apparent frequency within the resolution. */
  readonly inseparableFrom: readonly number[];
  /** In the order of the recording's channels. */
  readonly channels: readonly OrderOnChannel[];
}

export interface OrderAmplitudes {
  /** rad/s: the speed asked for, refined where the recording shows its orders. */
  readonly speed: number;
  /** Whether any order was seen, so that `speed` comes from the recording. */
  readonly speedFrom: 'recording' | 'given';
  /** Hz, distance at which two lines are told apart. */
  readonly resolution: number;
  readonly orders: readonly OrderMeasurement[];
}

export interface OrderInput {
  readonly recording: Recording;
  /** rad/s, shaft speed, greater than 0. */
  readonly speed: number;
  /** Multiples of shaft speed, each greater than 0, whole or not. */
  readonly orders: readonly number[];
  /** Share of the speed by which it may be wrong. Default 0.02. */
  readonly tolerance?: number;
  /** Share of recordings of noise alone in which any order may be seen. Default 0.005. */
  readonly falseAlarmRate?: number;
}

/** What is known of the line, for weighing orders; a whole shaft line serves. */
export interface SpeedHints {
  readonly joints?: readonly { readonly kind: 'universal' | 'rigid' | 'flexible' }[];
  readonly propeller?: { readonly blades: number };
  readonly motor?: { readonly poles?: number };
}

export interface SpeedEstimateOptions {
  /** rad/s, lowest and highest shaft speed that could be. */
  readonly range: readonly [number, number];
  readonly line?: SpeedHints;
}

export interface SpeedCandidate {
  /** rad/s */
  readonly speed: number;
  /** 0 … 1; the candidates share what they have, with the chance that none is right left over. */
  readonly confidence: number;
  /** Orders of this speed on which the recording shows a line. */
  readonly orders: readonly number[];
}

export interface SpeedEstimate {
  /** rad/s, of the likeliest candidate; NaN where nothing stands above the noise. */
  readonly speed: number;
  /** 0 … 1, chance that `speed` is right within 2 %. */
  readonly confidence: number;
  /** Likeliest first. */
  readonly candidates: readonly SpeedCandidate[];
}
