/** One quantity sampled on the uniform time base of its recording. */
export interface Channel {
  readonly name: string;
  readonly unit: ChannelUnit;
  readonly samples: Float64Array;
}

/** Acceleration in m/s²; turning rate in rad/s; sound in full scale, −1 to 1. */
export type ChannelUnit = 'm/s²' | 'rad/s' | 'full scale';

/** The samples taken in one trial. */
export interface Recording {
  readonly name: string;
  /** Hz, the true rate of `channels[*].samples`. */
  readonly sampleRate: number;
  readonly channels: readonly Channel[];
  readonly sampling: Sampling;
}

/** How well the recording was taken, in figures and in plain words. */
export interface Sampling {
  readonly kind: 'motion' | 'sound';
  /** s */
  readonly duration: number;
  /** Where the rate comes from: stamps fitted against the count of samples, the file's header, or the caller. */
  readonly rateFrom: 'stamps' | 'header' | 'given';
  /** s, standard deviation of the time stamps about the uniform base; 0 where there are none. */
  readonly jitter: number;
  /** s, step to which the stamps were rounded; 0 where none shows. */
  readonly stampStep: number;
  readonly gaps: readonly Gap[];
  /** Rows whose stamp equals the one before. */
  readonly equalStamps: number;
  /** Rows that stood out of order and were sorted. */
  readonly unsortedRows: number;
  readonly badCells: BadCells;
  readonly clipping: readonly Clipping[];
  /** What each column of a text file was taken for; empty for other files. */
  readonly columns: readonly ColumnReading[];
  /** Sentences for the person who made the recording: what was found, assumed, left out. */
  readonly notes: readonly string[];
}

/** Samples that the file does not have; they lie on a straight line in `samples` and must not be analysed. */
export interface Gap {
  /** Index of the first missing sample. */
  readonly start: number;
  /** How many are missing. */
  readonly count: number;
}

export interface BadCells {
  readonly count: number;
  /** 1-based line numbers of the first few. */
  readonly lines: readonly number[];
}

export interface Clipping {
  readonly channel: string;
  /** How many samples stand at the limit. */
  readonly count: number;
  /** The limit, in the channel's unit. */
  readonly level: number;
}

export interface ColumnReading {
  /** 0-based place in the row. */
  readonly index: number;
  /** As the file writes it; empty where it has no header. */
  readonly header: string;
  readonly role: 'time' | 'x' | 'y' | 'z' | 'magnitude' | 'sensor' | 'sound' | 'unused';
  /** Unit as understood: 's', 'ms', 'µs', 'ns', 'm/s²', 'g', 'mg', …; empty where none applies. */
  readonly unit: string;
  /** Why it was taken so, in a few words. */
  readonly reason: string;
}
