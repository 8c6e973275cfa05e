import type {
  Diagnosis,
  FrequencyBand,
  OrderTrack,
  ReadZipOptions,
  Recording,
  ResonanceSighting,
  Severity,
  ShaftLine,
} from '@sternline/core';
import type { ChannelEnvelope } from './envelope.js';
import type { RecordingPart } from './recording-part.js';
import type { SpectrumResolution } from './spectrum-resolution.js';

/** A file in memory. */
export interface NamedBytes {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** What the reader of a file was told by the user. */
export type ReadChoices = Omit<ReadZipOptions, 'name' | 'mostBytes'>;

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

/** What the course of a recording is worked out with. */
export interface CourseChoices extends AnalysisChoices {
  /** rad/s, that the recording was read for. */
  readonly readAt: number;
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

/** How much a channel shakes, and how knocking it is. */
export interface ChannelLevels {
  readonly channel: string;
  readonly unit: string;
  /** unit, root mean square about the mean. */
  readonly rms: number;
  /** unit, farthest from the mean. */
  readonly peak: number;
  readonly crestFactor: number;
  readonly kurtosis: number;
  /** m/s rms within its band; for acceleration whose rate permits it. */
  readonly velocity?: { readonly rms: number; readonly band: FrequencyBand };
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
  readonly levels: readonly ChannelLevels[];
  /** Of motion that is sampled fast enough for a figure. */
  readonly severity: Severity | undefined;
  /** How well it was taken, in sentences. */
  readonly quality: readonly string[];
  /** What its rate can and cannot show at this speed, in sentences. */
  readonly reach: readonly string[];
}

/** Amplitude over time and frequency: columns at equal steps of time, lines at equal steps from 0 Hz. */
export interface SpectrumMap {
  readonly channel: string;
  readonly unit: string;
  /** s, middle of the first column. */
  readonly start: number;
  /** s between columns. */
  readonly timeStep: number;
  readonly columns: number;
  /** Hz between lines. */
  readonly step: number;
  readonly lines: number;
  /** Peak amplitude in `unit`, column by column. */
  readonly amplitude: Float32Array;
}

/** What happens through a recording: its map, its speed and orders, and what rings in it. */
export interface TrialCourse {
  readonly maps: readonly SpectrumMap[];
  /** Absent where the shaft could not be followed; `unfollowed` says why. */
  readonly track?: OrderTrack;
  readonly unfollowed?: string;
  /** Whether the speed moved so much that one speed does not describe the recording. */
  readonly moved: boolean;
  readonly resonances: readonly ResonanceSighting[];
  /** How often a second the highest frequencies swell: blows of a rattle. Of sound, where its rate leaves room. */
  readonly blows?: ChannelSpectrum & { readonly band: FrequencyBand };
}
