import type { ShaftLine } from '../line/types.js';
import type { OrderAmplitudes, OrderMeasurement } from '../orders/types.js';
import type { ChannelUnit, Recording } from '../recording/types.js';
import type { TurnModulation } from './turn-modulation.js';
import type { Cause, ChannelPeak, OrderReading, Outcome, Rival } from './types.js';

/** Everything that the rules look at. */
export interface Evidence {
  readonly recording: Recording;
  readonly line: ShaftLine | undefined;
  /** Name of the channel along the shaft, if known. */
  readonly axial: string | undefined;
  /** rad/s, refined by the recording where it could be. */
  readonly speed: number;
  readonly measured: OrderAmplitudes;
  readonly readings: readonly OrderReading[];
  readonly peaks: readonly ChannelPeak[];
  /** Lines that are no multiple of shaft speed, one of each frequency, strongest first. */
  readonly strangers: readonly ChannelPeak[];
  /** Amplitude of the strongest order or stranger of each unit. */
  readonly strongest: ReadonlyMap<string, number>;
  /** What is left of the recording without its lines. */
  readonly noise: NoiseLevel;
  readonly modulation: TurnModulation;
}

/** How much noise a recording holds between its lines. */
export interface NoiseLevel {
  /** Root mean square, of the channel that holds most beside its strongest line. */
  readonly rms: number;
  readonly unit: ChannelUnit;
  /** The same over the strongest line of that unit. */
  readonly share: number;
}

/** One order, with how far it can be relied on. */
export interface OrderEvidence {
  readonly measurement: OrderMeasurement;
  readonly reading: OrderReading;
  /** Root of the sum of squares over the channels that show it; 0 where none does. */
  readonly amplitude: number;
  /** That amplitude over the strongest line of its unit. */
  readonly share: number;
  /** Seen, and no likely order shares its place. */
  readonly clear: boolean;
  /** Sentences: the figure, and what it must be taken with. */
  readonly sentences: readonly string[];
}

/** A cause that the evidence allows, before it is weighed. */
export interface Candidate {
  readonly cause: Cause;
  readonly evidence: readonly string[];
  /** What to do, without its outcomes. */
  readonly check: string;
  readonly outcomes: readonly Outcome[];
  readonly rivals: readonly Rival[];
  readonly caution: string;
  /** The lines it explains, so that the rest can be called unexplained. */
  readonly orders: readonly number[];
  /** Added to the log-odds that the traits give, for what they do not hold. */
  readonly adjustment?: number;
  /** Confidence by judgement, where no planted fault is like it and the traits say nothing. */
  readonly judged?: number;
}
