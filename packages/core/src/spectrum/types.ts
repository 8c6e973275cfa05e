import type { Gap } from '../recording/types.js';

export type WindowName = 'rectangular' | 'hann' | 'hamming' | 'blackman' | 'blackman-harris' | 'flat-top';

/** What is taken out of each segment before its transform: nothing, its mean, or its least-squares line. */
export type Detrend = 'none' | 'constant' | 'linear';

/** What a window does to a sine and to noise. */
export interface WindowFacts {
  /** Mean of the window: the share of a sine's amplitude that it passes. */
  readonly coherentGain: number;
  /** Width of the rectangular filter that would pass as much noise, in spectral lines (bins). */
  readonly equivalentNoiseBandwidth: number;
  /** dB by which a sine half-way between two lines reads low. */
  readonly scallopLoss: number;
}

/** How a recording is cut into segments for an averaged spectrum. */
export interface SegmentOptions {
  /** Share of a segment that the next one repeats, from 0 to below 1. Default 0.5. */
  readonly overlap?: number;
  /** Default 'hann'. */
  readonly window?: WindowName;
  /** Default 'constant'. */
  readonly detrend?: Detrend;
  /** Missing samples; a segment that holds any is left out. Default none. */
  readonly gaps?: readonly Gap[];
}

export interface WelchOptions extends SegmentOptions {
  /** Samples in a segment, 2 or more; any number, powers of two are fastest. */
  readonly segmentLength: number;
}

export interface AmplitudeSpectrumOptions extends SegmentOptions {
  /** Samples in a segment; default all of them, which is one segment and no averaging. */
  readonly segmentLength?: number;
}

export interface PeakOptions extends SegmentOptions {
  /** Samples in a segment; default a power of two that gives seven segments or more, of 4 s at most. */
  readonly segmentLength?: number;
  /** Share of recordings of noise alone in which any peak may be reported. Default 0.005. */
  readonly falseAlarmRate?: number;
}

/** One-sided power spectral density. */
export interface Density {
  /** Hz, from 0 to half the sampling rate. */
  readonly frequency: Float64Array;
  /** unit²/Hz */
  readonly density: Float64Array;
}

/** One-sided amplitude spectrum: peak amplitude of a sine that falls on a line. */
export interface AmplitudeSpectrum {
  /** Hz */
  readonly frequency: Float64Array;
  /** unit, peak */
  readonly amplitude: Float64Array;
}

/** A line that stands above the noise around it. */
export interface Peak {
  /** Hz, between the lines of the spectrum. */
  readonly frequency: number;
  /** Hz, standard error. */
  readonly frequencyError: number;
  /** unit, peak amplitude. */
  readonly amplitude: number;
  /** unit, standard error of the amplitude. */
  readonly amplitudeError: number;
  /** unit, amplitude that noise alone would show here. */
  readonly floor: number;
  /** dB above that floor. */
  readonly prominence: number;
}

/** A range of frequencies. */
export interface FrequencyBand {
  /** Hz */
  readonly from: number;
  /** Hz, above `from`, up to half the sampling rate. */
  readonly to: number;
}

/** How large a signal is and how it is made up, about its mean. */
export interface Levels {
  /** unit */
  readonly mean: number;
  /** unit, root mean square about the mean. */
  readonly rms: number;
  /** unit, farthest from the mean. */
  readonly peak: number;
  /** Peak over rms: √2 for a sine, 4 to 5 for noise, more where something knocks. NaN for a signal that does not move. */
  readonly crestFactor: number;
  /** Fourth moment over the squared second: 1.5 for a sine, 3 for Gaussian noise, more where something knocks. NaN likewise. */
  readonly kurtosis: number;
}

/** One-sided power spectral density, segment by segment. */
export interface Spectrogram {
  /** s, middle of each segment from the first sample. */
  readonly time: Float64Array;
  /** Hz, from 0 to half the sampling rate. */
  readonly frequency: Float64Array;
  /** unit²/Hz, one array over frequency for each time. */
  readonly density: readonly Float64Array[];
}

/** A signal and its quadrature: x + i H(x). */
export interface AnalyticSignal {
  /** The signal itself. */
  readonly real: Float64Array;
  /** Its Hilbert transform: every sine a quarter of a period later. */
  readonly imaginary: Float64Array;
  /** Length of the two together: the instantaneous amplitude. */
  readonly envelope: Float64Array;
}

export interface IntegrateOptions {
  /** What stays of the acceleration; what lies below `from` would drown everything else. */
  readonly band: FrequencyBand;
  /** Default 'velocity'. */
  readonly give?: 'velocity' | 'displacement';
}

export interface EnvelopeSpectrumOptions extends AmplitudeSpectrumOptions {
  /** Where the rattle rings: the carrier, well above the orders that are looked for. */
  readonly band: FrequencyBand;
}

/** Machine classes of ISO 10816-1:1995, annex B. */
export type MachineClass = 'I' | 'II' | 'III' | 'IV';

export interface SeverityOptions {
  /** Default 'I', machines up to 15 kW. */
  readonly machineClass?: MachineClass;
}

/** Broadband vibration velocity beside the zones that a standard draws for larger machines. */
export interface Severity {
  /** m/s rms, of the axis that moves most, within `band`. */
  readonly velocity: number;
  readonly channel: string;
  /** Hz, the part of 10 to 1000 Hz that the recording shows. */
  readonly band: FrequencyBand;
  /** A (as new) to D (harmful); undefined where the rate does not cover the band, so that the velocity is a least value. */
  readonly zone: 'A' | 'B' | 'C' | 'D' | undefined;
  /** m/s rms between A and B, B and C, C and D. */
  readonly limits: readonly [number, number, number];
  /** Sentences: what the zones are made for, and what this recording lacks. */
  readonly scope: readonly string[];
}

/** Samples and the times at which they were taken. */
export interface LeastSquaresInput {
  /** s */
  readonly times: ArrayLike<number>;
  readonly samples: ArrayLike<number>;
}

export interface LeastSquaresOptions {
  /** Hz */
  readonly frequencies: ArrayLike<number>;
}

/** Sines fitted to samples at uneven times, one frequency at a time. */
export interface LeastSquaresSpectrum {
  /** Hz */
  readonly frequency: Float64Array;
  /** unit, peak */
  readonly amplitude: Float64Array;
  /** rad, of a cosine at time 0. */
  readonly phase: Float64Array;
  /** Share of the variance that the fit explains, 0 to 1. */
  readonly share: Float64Array;
  /** unit, mean of the samples. */
  readonly mean: number;
}
