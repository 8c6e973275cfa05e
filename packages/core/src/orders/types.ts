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

/** Shaft speed at a time; between points it runs straight, outside them it stays level. */
export interface SpeedAtTime {
  /** s, from the first sample. */
  readonly time: number;
  /** rad/s, greater than 0. */
  readonly speed: number;
}

export interface TrackOptions {
  /** Multiples of shaft speed, each greater than 0, whole or not, each once. */
  readonly orders: readonly number[];
  /** The speed through the recording; where it is not given it is followed in the recording itself. */
  readonly speed?: readonly SpeedAtTime[];
  /** rad/s, lowest and highest speed to look for. Default what the rate can show: from 3 Hz (8 Hz for sound) to half the rate, 400 Hz at most. */
  readonly range?: readonly [number, number];
  /** What is known of the line, which says which orders to expect. */
  readonly line?: SpeedHints;
}

/** One order on one channel through a recording. */
export interface TrackedChannel {
  readonly channel: string;
  readonly unit: ChannelUnit;
  /** Peak amplitude at each time, unit, the share of noise taken out. */
  readonly amplitude: Float64Array;
  /** Standard error of the amplitude at each time, unit. */
  readonly amplitudeError: Float64Array;
}

/** One order through a recording; `amplitude` and its error are those of the channel that shows it most. */
export interface TrackedOrder extends TrackedChannel {
  readonly order: number;
  /** 1 where the amplitude is not this order's alone: beside 0 Hz, half the rate or another order, by folding or not. */
  readonly hidden: Uint8Array;
  readonly channels: readonly TrackedChannel[];
}

export interface OrderTrack {
  /** s, from the first sample. */
  readonly time: Float64Array;
  /** rad/s at each time. */
  readonly speed: Float64Array;
  readonly speedFrom: 'given' | 'recording';
  /** 0 … 1, chance that the speed was followed right; 1 where it was given. */
  readonly confidence: number;
  readonly orders: readonly TrackedOrder[];
}

/** Amplitude over shaft angle instead of time: order by order through a recording. */
export interface OrderMap {
  /** s, middle of each row. */
  readonly time: Float64Array;
  /** rad/s in the middle of each row. */
  readonly speed: Float64Array;
  /** Multiples of shaft speed. */
  readonly order: Float64Array;
  /** unit, peak; one array over the orders for each time. */
  readonly amplitude: readonly Float64Array[];
}

export interface OrderMapOptions {
  readonly speed: readonly SpeedAtTime[];
  /** Highest order shown; default 10. */
  readonly highest?: number;
  /** Turns in each row, 4 or more, whole; the more, the finer the orders. Default 16. */
  readonly turns?: number;
}

export interface AngleSamplingOptions {
  readonly speed: readonly SpeedAtTime[];
  /** Samples in a turn, a whole number of 2 or more. */
  readonly perTurn: number;
}

/** A signal over shaft angle. */
export interface AngleSamples {
  /** rad turned since the first sample. */
  readonly angle: Float64Array;
  /** s, when the shaft stood there. */
  readonly time: Float64Array;
  readonly samples: Float64Array;
}

/** A frequency at which orders swell as they pass it, whatever the shaft speed. */
export interface ResonanceSighting {
  /** Hz */
  readonly frequency: number;
  /** Orders that swell there. */
  readonly orders: readonly number[];
  /** How many times the amplitude on either side, of the order that swells most. */
  readonly rise: number;
}

export interface TapOptions {
  /** Hz, where to look for the ring. Default from 5 Hz to 0.45 of the rate. */
  readonly range?: readonly [number, number];
}

/** Frequency and damping of one ring, by one method. */
export interface RingReading {
  /** Hz, of the free ring. */
  readonly frequency: number;
  /** Hz, standard error. */
  readonly frequencyError: number;
  /** Share of critical damping. */
  readonly damping: number;
  /** Standard error of the damping. */
  readonly dampingError: number;
}

export interface TapTest extends RingReading {
  /** The channel that rang most. */
  readonly channel: string;
  /** Mean over the taps, by the logarithmic decrement of the envelope. */
  readonly byDecrement: RingReading;
  /** Mean over the taps, by least squares of a decaying sine. */
  readonly byFit: RingReading;
  /** Whether one decaying sine explains nine tenths of the ring and the two agree within twice their joint error or a fifth of the damping. */
  readonly agreement: 'agree' | 'differ';
  /** s, when each tap that was used was struck. */
  readonly taps: readonly number[];
  /** Sentences on what the reading must be taken with. */
  readonly notes: readonly string[];
}

/** A recording with the speed at which it was taken: steady in rad/s, or over time. */
export interface RunAtSpeed {
  readonly recording: Recording;
  readonly speed: number | readonly SpeedAtTime[];
}

export interface SeparateInput {
  /** Two or more at steady speeds apart by 3 % or more, or one or more with a speed that moves. */
  readonly recordings: readonly RunAtSpeed[];
  /** Orders that may be; default 0.5, 1, 1.5, 2, 3 … 12. */
  readonly orders?: readonly number[];
}

/** What a line of the first recording is. */
export interface SeparatedLine {
  /** Hz, where the first recording shows it. */
  readonly frequency: number;
  /** Peak amplitude there, in the unit of its channel. */
  readonly amplitude: number;
  readonly channel: string;
  /** The one explanation that all recordings bear out; 'fixed' is a frequency that does not follow the shaft; undefined where several or none do. */
  readonly is: number | 'fixed' | undefined;
  /** Whether that order lies beyond half the sampling rate of the first recording. */
  readonly folded: boolean;
  /** Everything that would explain the line in the first recording alone. */
  readonly couldBe: readonly (number | 'fixed')[];
  /** What of it the other recordings leave. */
  readonly remains: readonly (number | 'fixed')[];
}
