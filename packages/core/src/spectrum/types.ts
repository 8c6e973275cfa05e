export type WindowName = 'rectangular' | 'hann' | 'hamming' | 'blackman' | 'blackman-harris' | 'flat-top';

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
  /** unit, amplitude that noise alone would show here. */
  readonly floor: number;
  /** dB above that floor. */
  readonly prominence: number;
}
