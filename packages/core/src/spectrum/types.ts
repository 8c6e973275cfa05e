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
