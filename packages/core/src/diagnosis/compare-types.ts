import type { ChannelUnit } from '../recording/types.js';

export interface CompareRecordingsOptions {
  /** rad/s, shaft speed of both recordings, or of each; refined within 2 % where they show their orders. */
  readonly speed: number | SpeedPair;
  /** For its blade count, where orders are not given. */
  readonly line?: { readonly propeller?: { readonly blades: number } };
  /** Multiples of shaft speed. Default 1, 2, 3, 4 and the blade count. */
  readonly orders?: readonly number[];
  /** Of the bootstrap; any whole number. Default 1. */
  readonly seed?: number;
  /** `together` adds the squares of all channels of one unit, so that turning the phone changes nothing. Default 'together'. */
  readonly channels?: 'together' | 'apart';
  /** Share by which the two speeds may differ. Default 0.02. */
  readonly tolerance?: number;
  /** Share by which an amplitude differs between runs alike, one standard deviation. Default 0.02, which phones seldom beat. */
  readonly repeatability?: number;
  /** Chance that the interval holds the true ratio. Default 0.95. */
  readonly confidence?: number;
}

export interface SpeedPair {
  /** rad/s */
  readonly before: number;
  /** rad/s */
  readonly after: number;
}

export type ComparisonVerdict = 'lower' | 'higher' | 'no difference shown';

/** Why no verdict is given though the figures stand. */
export type Withheld =
  'too-short' | 'speed' | 'mount' | 'gain' | 'clipping' | 'folded' | 'hidden' | 'shared' | 'not-seen';

export interface ComparedAmplitude {
  /** Peak amplitude, the share of noise taken out; of several channels, the root of the sum of squares. */
  readonly amplitude: number;
  /** Standard error by the scatter between segments. */
  readonly amplitudeError: number;
  /** Whether it stands above the noise on one channel or more. */
  readonly seen: boolean;
}

export interface ComparisonRow {
  readonly order: number;
  /** Hz, at the mean of both speeds. */
  readonly frequency: number;
  /** Its name, or 'x + y + z' for several together. */
  readonly channel: string;
  readonly unit: ChannelUnit;
  readonly before: ComparedAmplitude;
  readonly after: ComparedAmplitude;
  /** After over before. */
  readonly ratio: number;
  /** Between which the true ratio lies with the stated confidence; Infinity where the amplitude before may be 0. */
  readonly interval: readonly [low: number, high: number];
  /** 20 log₁₀ of the ratio. */
  readonly decibels: number;
  /** Standard error of that, dB. */
  readonly decibelsError: number;
  readonly verdict: ComparisonVerdict;
  readonly withheld?: Withheld;
  /** The verdict in words, with its figures. */
  readonly sentence: string;
}

export type ComparisonCode =
  | 'too-short'
  | 'speed-differs'
  | 'speed-not-seen'
  | 'speed-drifts'
  | 'mount-turned'
  | 'channels-differ'
  | 'gain-unknown'
  | 'level-swings'
  | 'floor-changed'
  | 'clipped'
  | 'folded'
  | 'rate-differs'
  | 'one-run-each';

/** What the comparison must be taken with. */
export interface ComparisonStatement {
  readonly code: ComparisonCode;
  readonly sentence: string;
}

export interface RecordingComparison {
  /** By order, then by channel. */
  readonly rows: readonly ComparisonRow[];
  /** rad/s, as refined. */
  readonly speed: SpeedPair;
  /** Hardest first. */
  readonly statements: readonly ComparisonStatement[];
}
