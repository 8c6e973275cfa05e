import type { Diagnosis, ReadDelimitedOptions, Recording, ShaftLine } from '@sternline/core';
import type { ChannelEnvelope } from './envelope.js';
import type { RecordingPart } from './recording-part.js';
import type { SpectrumResolution } from './spectrum-resolution.js';

/** A file in memory. */
export interface NamedBytes {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** What the reader of a file was told by the user. */
export type ReadChoices = Omit<ReadDelimitedOptions, 'name'>;

/** A recording, or why there is none. */
export type ReadOutcome =
  | { readonly kind: 'read'; readonly recording: Recording }
  | {
      readonly kind: 'stopped';
      readonly code: string;
      /** What was found and where, a sentence or two. */
      readonly found: string;
      /** What to do about it. */
      readonly remedy: string;
    };

/** What an analysis is told beside the recording. */
export interface AnalysisChoices {
  /** rad/s, where the builder knows it. */
  readonly speed?: number;
  /** rad/s, taken where neither the builder nor the recording tells. */
  readonly wantedSpeed: number;
  readonly line?: ShaftLine;
  /** The part to look at; the whole unless given. */
  readonly part?: RecordingPart;
}

/** Where the speed of an analysis comes from. */
export type SpeedSource = 'given' | 'recording' | 'wanted';

/** A shaft speed that the recording suggests. */
export interface SpeedSuggestion {
  /** rad/s */
  readonly speed: number;
  /** 0 … 1 */
  readonly confidence: number;
}

/** Peak amplitude of each line of a channel, lines at equal steps from 0 Hz. */
export interface ChannelSpectrum {
  readonly channel: string;
  readonly unit: string;
  /** Hz */
  readonly step: number;
  readonly amplitude: Float64Array;
}

/** Everything the page shows of one recording at one speed. */
export interface TrialAnalysis {
  /** rad/s */
  readonly speed: number;
  readonly speedFrom: SpeedSource;
  /** Most likely first; empty where nothing repeats. */
  readonly suggestions: readonly SpeedSuggestion[];
  readonly diagnosis: Diagnosis;
  /** Strongest channel first. */
  readonly spectra: readonly ChannelSpectrum[];
  readonly resolution: SpectrumResolution;
  readonly envelopes: readonly ChannelEnvelope[];
  readonly part: RecordingPart;
}
