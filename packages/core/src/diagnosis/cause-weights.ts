import type { Traits } from './traits.js';
import type { Cause } from './types.js';

export interface CauseWeights {
  /** Log-odds where every trait is 0. */
  readonly bias: number;
  /** Log-odds that a trait of 1 adds. */
  readonly weights: Readonly<Partial<Record<keyof Traits, number>>>;
}

/**
 * How far each trait speaks for a cause. Fitted by tests/reference/diagnosis/fit_weights.py on simulated recordings of their own
 * seeds, with the signs that sense asks; docs/diagnosis-trials.md says how the result does on others.
 */
export const CAUSE_WEIGHTS: Readonly<Record<Cause, CauseWeights>> = {
  unbalance: {
    bias: -9.14,
    weights: {
      once: 6.6,
      onceOverTwice: 3.98,
      axialOnce: -5.18,
      axisKnown: 1.37,
      row: -0.33,
      halves: -3.89,
      noise: -1.74,
      modulation: -0.05,
      burst: -3.97,
      odd: -0.44,
      stranger: -0.82,
      nearCritical: -2.46,
      straight: -0.39,
      lineKnown: 0.11,
    },
  },
  'bent-shaft': {
    bias: -17.19,
    weights: {
      once: 3.12,
      onceLead: 2.74,
      onceOverTwice: 11.1,
      twice: 3.69,
      axialOnce: 6.79,
      axisKnown: -4.39,
      row: -0.18,
      halves: -2.87,
      noise: -1.38,
      modulation: -0.51,
      burst: -4.12,
      stranger: -1.45,
      mains: -1.16,
      lineKnown: -0.35,
    },
  },
  misalignment: {
    bias: -15.42,
    weights: {
      once: 7.02,
      twice: 9.47,
      twiceLead: 1.36,
      onceOverTwice: 0.05,
      straight: 6.6,
      lineKnown: -3.37,
      axialTwice: 5.89,
      axisKnown: -3.25,
      halves: -3.29,
      noise: -4.66,
      burst: -2.67,
      fourTimes: -2.88,
      blade: -0.9,
      stranger: -0.71,
      mains: -0.22,
    },
  },
  'joint-angle': {
    bias: -6.69,
    weights: {
      twice: 7.85,
      twiceLead: 1.02,
      onceOverTwice: -0.16,
      straight: -6.51,
      cancelling: -6.7,
      lineKnown: 0.37,
      twoBlades: -1.28,
      axialTwice: -2.38,
      axisKnown: 0.72,
      row: -0.19,
      halves: -1.02,
      noise: -0.22,
      modulation: -0.55,
      burst: -2.78,
      bladeTwice: -0.25,
      fourTimes: -0.66,
      stranger: -0.52,
      twiceFolded: -0.3,
    },
  },
  'joint-phase': {
    bias: -9.04,
    weights: {
      twice: 9.3,
      twiceLead: 3.01,
      axialTwice: -0.98,
      axisKnown: 0.06,
      row: -1.53,
      halves: -2.04,
      noise: -0.1,
      modulation: -0.54,
      burst: -4.09,
      stranger: -0.04,
    },
  },
  'blade-pass': {
    bias: -6.03,
    weights: {
      blade: 6.67,
      bladeTwice: 2.72,
      bladeLead: 2.51,
      twoBlades: -2.42,
      row: -1.19,
      halves: -1.83,
      noise: -0.66,
      modulation: -1.55,
      burst: -1.29,
      stranger: -1.03,
      mains: -0.36,
      odd: -1.15,
    },
  },
  looseness: {
    bias: -10.23,
    weights: { row: 2.94, halves: 5.82, noise: -0.12, modulation: 2.72, once: 7.42, twiceLead: -0.47 },
  },
  rubbing: {
    bias: -4.86,
    weights: {
      noise: 2.41,
      modulation: 3.3,
      burst: 7.63,
      row: -2.1,
      halves: -7.79,
      stranger: -2.22,
      mains: -0.04,
      odd: -1.47,
    },
  },
  whirl: {
    bias: -12.93,
    weights: {
      nearCritical: 10.69,
      once: 0.45,
      onceLead: 1.66,
      onceOverTwice: 1.2,
      row: -4.26,
      halves: -2.21,
      noise: -0.27,
      axialOnce: -2.7,
      axisKnown: 0.66,
    },
  },
  'structural-resonance': {
    bias: -8.47,
    weights: {
      stranger: 9.72,
      mains: -0.37,
      odd: -0.54,
      halves: -3.08,
      row: -0.64,
      modulation: -3.81,
      burst: -1.16,
      noise: 2.07,
    },
  },
  electrical: { bias: -13.77, weights: { mains: 15.53, mainsPair: 0.47, stranger: -2.54 } },
  unexplained: {
    bias: -6.69,
    weights: {
      odd: 6.4,
      oddLead: 1.52,
      row: -0.15,
      halves: -3.69,
      noise: -0.57,
      modulation: -0.57,
      burst: -2.96,
      twice: -0.23,
      once: -0.94,
      blade: -0.67,
      lineKnown: 0.76,
    },
  },
  // Judged, see find-torsional.ts.
  'torsional-resonance': { bias: -2, weights: {} },
};
