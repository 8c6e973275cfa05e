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
  /**
   * How the samples came onto their uniform base: one sample a row (`counts`, nothing is interpolated), interpolated
   * because the true rate moved (`piecewise`), or interpolated because the spacing was irregular (`stamps`).
   */
  readonly timeBase?: TimeBase;
  /** Hz, up to which amplitudes hold after interpolation; half the rate where nothing was interpolated. */
  readonly passband?: number;
  /** Whether the steady pull of gravity is in the samples; for motion only. */
  readonly gravity?: Gravity;
  /** Runs in which a channel did not move at all though it does elsewhere, and channels that never move. */
  readonly stuck?: readonly Stuck[];
  /** Rows that repeat the row before in every channel: the sensor is slower than the logger. */
  readonly heldRows?: number;
  /** The step to which each channel's samples were rounded. */
  readonly resolution?: readonly Resolution[];
  /** Sensors found in the file, each of which `readDelimited` reads by the name given here. */
  readonly sensors?: readonly SensorReading[];
  /** Rows left out since they repeat stamp and values of the row before. */
  readonly doubledRows?: number;
  /** The recorder turned its gain down at loud events; absent where that does not show, which is no proof that it did not. */
  readonly levelPumping?: LevelPumping;
  /** The samples as they were taken, where the spacing was irregular (`timeBase` is `stamps`). */
  readonly asStamped?: StampedSamples;
  /** Files of a zip that {@link readZip} reads by the name given here; the one that was read is the first. */
  readonly entries?: readonly string[];
}

/** What automatic gain did to the level after loud events. */
export interface LevelPumping {
  readonly channel: string;
  /** Loud events after which the level around them could be looked at. */
  readonly events: number;
  /** After how many of these the level was held down. */
  readonly pumped: number;
  /** dB, by how much it stood lower just after the event, at the median. */
  readonly dip: number;
  /** s, in which it came back by 63 %, at the median. */
  readonly recovery: number;
}

/** Samples at the times of their stamps. */
export interface StampedSamples {
  /** s from the first sample, ascending. */
  readonly times: Float64Array;
  readonly channels: readonly Channel[];
}

export type TimeBase = 'counts' | 'piecewise' | 'stamps';

export type Gravity = 'present' | 'removed' | 'unknown';

/** Samples that the file does not have; they lie on a straight line in `samples` and must not be analysed. */
export interface Gap {
  /** Index of the first missing sample. */
  readonly start: number;
  /** How many are missing. */
  readonly count: number;
}

/** Cells that hold no number where one was expected; up to two in a row are filled on a straight line, more make a gap. */
export interface BadCells {
  readonly count: number;
  /** 1-based line numbers of the first few. */
  readonly lines: readonly number[];
}

export interface Clipping {
  readonly channel: string;
  /** How many samples stand at the limit. */
  readonly count: number;
  /** The limit, in the channel's unit, with its sign. */
  readonly level: number;
}

export interface Stuck {
  readonly channel: string;
  /** Index of the first sample of the run. */
  readonly start: number;
  readonly count: number;
}

export interface Resolution {
  readonly channel: string;
  /** In the channel's unit; 0 where no step shows. */
  readonly step: number;
}

export interface SensorReading {
  /** As the file writes it, or the quantity where the columns' headers tell it. */
  readonly name: string;
  readonly quantity: 'acceleration' | 'rotation' | 'other';
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
  /** 0 to 1: 1 where the caller said so, high where name and values agree, low where it was guessed. */
  readonly confidence?: number;
}

/** What the caller knows better than the file. */
export interface ReadDelimitedOptions {
  readonly name?: string;
  /** Hz; the stamps, if there are any, are then left aside. */
  readonly sampleRate?: number;
  /** Columns by header or 0-based place. */
  readonly columns?: ColumnChoice;
  /** Which sensor to read where the file holds several: a name out of `sampling.sensors`, or a quantity. */
  readonly sensor?: string;
  readonly timeUnit?: TimeUnit;
  /** Whether gravity is in the samples, where the reading of it would be wrong. */
  readonly gravity?: Gravity;
}

/** What is known about a text before it is read. */
export interface TextHints extends ReadDelimitedOptions {
  /** What the file's name says that its rows hold, where its head does not say it. */
  readonly fileSays?: 'acceleration' | 'rotation';
}

export interface ColumnChoice {
  readonly time?: string | number;
  readonly x?: string | number;
  readonly y?: string | number;
  readonly z?: string | number;
  /** Unit of the axes as written: 'm/s²', 'g', 'mg', 'rad/s', … */
  readonly unit?: string;
}

export type TimeUnit = 's' | 'ms' | 'µs' | 'us' | 'ns' | 'min';

export interface ReadWavOptions {
  readonly name?: string;
}

export interface ReadZipOptions extends ReadDelimitedOptions {
  /** The file to read: a name out of `sampling.entries`, or its end. */
  readonly entry?: string;
  /** Bytes that may be unpacked in all. Default 268 435 456 (256 MiB). */
  readonly mostBytes?: number;
}

/** What a file is, by its first bytes. */
export interface FileFacts {
  /** With its article, for a sentence: 'an MP4 recording'. */
  readonly format: string;
  /** The function that reads it; `media` where a browser may play it, `none` where nothing does. */
  readonly reader: 'readDelimited' | 'readWav' | 'readZip' | 'media' | 'none';
  /** What to do with it, a sentence. */
  readonly advice: string;
}

export interface ResampleOptions {
  /** Hz, rate of the samples. */
  readonly from: number;
  /** Hz, rate wanted. */
  readonly to: number;
}

/** Samples at another rate, and the band in which they hold. */
export interface Resampled {
  readonly samples: Float64Array;
  /** Hz */
  readonly sampleRate: number;
  /** Hz, up to which amplitudes hold within 0.01 %. */
  readonly passband: number;
  /** Hz, from which on nothing comes through above −90 dB. */
  readonly stopband: number;
}

export interface AlignOptions {
  /** s, most by which the clocks may stand apart. Default: any at which the recordings overlap. */
  readonly longestOffset?: number;
}

/** How two recordings of one trial lie to one another. */
export interface Alignment {
  /** s, to be added to a time of the second recording to have it on the clock of the first. */
  readonly offset: number;
  /** s, standard error of the offset. */
  readonly offsetError: number;
  /** By how much the second clock runs slower than the first, as a share: first = offset + (1 + drift) · second. 0 where too few marks tell it. */
  readonly drift: number;
  /** Standard error of the drift; NaN where it was not told. */
  readonly driftError: number;
  /** Whether marks (taps) in both told it, or the course of the level. */
  readonly from: 'marks' | 'level';
  /** Marks found in both; 0 where the level told it. */
  readonly marks: number;
  /** 0 to 1, how far the best offset stands out from the next best. */
  readonly confidence: number;
}
