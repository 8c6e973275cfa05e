import type { ShaftLine } from '../line/types.js';
import type { OrderAmplitudes, OrderMeasurement } from '../orders/types.js';
import type { Recording } from '../recording/types.js';
import type { ChannelPeak, Finding, OrderReading } from './types.js';

/** Everything that the rules look at. */
export interface Evidence {
  readonly recording: Recording;
  readonly line: ShaftLine | undefined;
  /** rad/s, refined by the recording where it could be. */
  readonly speed: number;
  readonly measured: OrderAmplitudes;
  readonly readings: readonly OrderReading[];
  readonly peaks: readonly ChannelPeak[];
  /** Lines that are no multiple of shaft speed, one of each frequency, strongest first. */
  readonly strangers: readonly ChannelPeak[];
  /** Amplitude of the strongest order or stranger, in the main unit. */
  readonly strongest: number;
}

/** One order, with how far it can be relied on. */
export interface OrderEvidence {
  readonly measurement: OrderMeasurement;
  readonly reading: OrderReading;
  /** Root of the sum of squares over the channels that show it; 0 where none does. */
  readonly amplitude: number;
  /** Seen, and no likely order shares its place. */
  readonly clear: boolean;
  /** What confidence is multiplied by: below 1 where the order is folded or shares its place with an unlikely one. */
  readonly trust: number;
  /** Sentences: the figure, and what it must be taken with. */
  readonly sentences: readonly string[];
}

/** A finding with the lines it explains, so that the rest can be called unexplained. */
export interface RuleFinding {
  readonly finding: Finding;
  readonly orders: readonly number[];
  readonly frequencies: readonly number[];
}
