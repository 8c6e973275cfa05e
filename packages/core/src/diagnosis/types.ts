import type { ShaftLine } from '../line/types.js';
import type { Recording } from '../recording/types.js';
import type { Peak } from '../spectrum/types.js';

export type Cause =
  | 'unbalance'
  | 'bent-shaft'
  | 'joint-angle'
  | 'joint-phase'
  | 'misalignment'
  | 'looseness'
  | 'rubbing'
  | 'blade-pass'
  | 'whirl'
  | 'torsional-resonance'
  | 'structural-resonance'
  | 'electrical'
  | 'unexplained';

/** One order of shaft speed as the recording shows it. */
export interface OrderReading {
  readonly order: number;
  /** Hz, order × shaft frequency. */
  readonly frequency: number;
  /** Hz, where the sampling shows it. */
  readonly apparentFrequency: number;
  /** Whether the two differ. */
  readonly folded: boolean;
  /** Peak amplitude in `unit`, of the channel that shows it most. */
  readonly amplitude: number;
  /** One standard error of the amplitude. */
  readonly amplitudeError: number;
  readonly unit: string;
  readonly channel: string;
  /** Whether it stands above the noise. */
  readonly seen: boolean;
  /** Other orders that fall on the same apparent frequency and cannot be told from it. */
  readonly inseparableFrom: readonly number[];
}

export interface ChannelPeak extends Peak {
  readonly channel: string;
  readonly unit: string;
}

/** What else a finding could be. */
export interface Rival {
  readonly cause: Cause;
  /** Why it ranks lower, or what would have to be seen for it to rank higher; a sentence. */
  readonly why: string;
}

/** What one outcome of a check would mean. */
export interface Outcome {
  /** A clause that follows "if": 'order 1 falls to a third or less'. */
  readonly result: string;
  /** A clause that goes on from there: 'balance the propeller'. */
  readonly means: string;
}

export interface Finding {
  readonly cause: Cause;
  /** 0 … 1: the share of simulated trials in which a finding of this confidence named a cause that was planted. */
  readonly confidence: number;
  /** What speaks for it, one sentence a piece, with its figures. */
  readonly evidence: readonly string[];
  /** The cheapest check that would separate it from its rivals, and what each outcome would mean. */
  readonly nextCheck: string;
  /** The same outcomes, one by one. */
  readonly outcomes: readonly Outcome[];
  /** What else it could be, likeliest first. */
  readonly rivals: readonly Rival[];
  /** What to take care of in that check, in sentences. */
  readonly caution?: string;
}

export interface Diagnosis {
  readonly orders: readonly OrderReading[];
  readonly peaks: readonly ChannelPeak[];
  /** Most confident first; empty where nothing stands above the noise. */
  readonly findings: readonly Finding[];
  /** What the recording cannot show at this speed, in sentences. */
  readonly limits: readonly string[];
}

export interface DiagnosisInput {
  readonly recording: Recording;
  /** rad/s, shaft speed during the recording. */
  readonly speed: number;
  readonly line?: ShaftLine;
  /** Name of the channel that lies along the shaft, if one does and it is known. */
  readonly axial?: string;
}
