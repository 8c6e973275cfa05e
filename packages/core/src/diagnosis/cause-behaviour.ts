import type { Cause } from './types.js';

/** What becomes of a cause's own line, and how likely each is: gone (below 0.12), a third (to 0.35), less (to 0.75), stays (to 1.35), grows. */
export type Effect = 'gone' | 'a third' | 'less' | 'stays' | 'grows';

export const EFFECTS: readonly Effect[] = ['gone', 'a third', 'less', 'stays', 'grows'];

/** Ratios of amplitude that part the effects. */
export const EFFECT_EDGES: readonly number[] = [0.12, 0.35, 0.75, 1.35];

export interface CauseBehaviour {
  /** Slope of log amplitude on log speed: what to expect, and the spread among lines. */
  readonly growth: readonly [number, number];
  /** Likelihoods in the order of `EFFECTS`. */
  readonly propellerOff: readonly [number, number, number, number, number];
  readonly inAir: readonly [number, number, number, number, number];
  /** The joint turned by half a turn on its shaft: chance that the line changes (below 0.7 or above 1.4). */
  readonly jointTurned: number;
}

/**
 * How each cause behaves from trial to trial: likelihoods, judged from builders' symptoms and from what theory says of the
 * force (unbalance with the square of the speed, the push of a joint with the torque it carries, a bend partly with a deflection
 * that is there at rest). Common practice and our judgement; no published table is known.
 */
export const CAUSE_BEHAVIOUR: Readonly<Record<Cause, CauseBehaviour>> = {
  unbalance: {
    growth: [2, 0.5],
    propellerOff: [0.258, 0.602, 0.1, 0.03, 0.01],
    inAir: [0.006, 0.014, 0.06, 0.87, 0.05],
    jointTurned: 0.06,
  },
  'bent-shaft': {
    growth: [1, 0.6],
    propellerOff: [0.009, 0.021, 0.2, 0.72, 0.05],
    inAir: [0.006, 0.014, 0.06, 0.87, 0.05],
    jointTurned: 0.06,
  },
  misalignment: {
    growth: [1.8, 0.7],
    propellerOff: [0.009, 0.021, 0.12, 0.78, 0.07],
    inAir: [0.009, 0.021, 0.12, 0.8, 0.05],
    jointTurned: 0.85,
  },
  'joint-angle': {
    growth: [1.6, 0.6],
    propellerOff: [0.016, 0.184, 0.6, 0.18, 0.02],
    inAir: [0.006, 0.074, 0.57, 0.25, 0.1],
    jointTurned: 0.06,
  },
  'joint-phase': {
    growth: [1.6, 0.6],
    propellerOff: [0.016, 0.184, 0.6, 0.18, 0.02],
    inAir: [0.006, 0.074, 0.57, 0.25, 0.1],
    jointTurned: 0.1,
  },
  looseness: {
    growth: [1.3, 0.8],
    propellerOff: [0.015, 0.035, 0.3, 0.58, 0.07],
    inAir: [0.009, 0.021, 0.12, 0.6, 0.25],
    jointTurned: 0.2,
  },
  rubbing: {
    growth: [1, 0.8],
    propellerOff: [0.015, 0.035, 0.2, 0.62, 0.13],
    inAir: [0.009, 0.021, 0.12, 0.7, 0.15],
    jointTurned: 0.2,
  },
  'blade-pass': {
    growth: [2.4, 0.6],
    propellerOff: [0.807, 0.143, 0.03, 0.01, 0.01],
    inAir: [0.68, 0.12, 0.15, 0.04, 0.01],
    jointTurned: 0.05,
  },
  whirl: {
    growth: [4.5, 1.8],
    propellerOff: [0.3, 0.3, 0.25, 0.1, 0.05],
    inAir: [0.1, 0.1, 0.3, 0.35, 0.15],
    jointTurned: 0.12,
  },
  'torsional-resonance': {
    growth: [4.5, 2],
    propellerOff: [0.3, 0.3, 0.25, 0.1, 0.05],
    inAir: [0.15, 0.15, 0.3, 0.25, 0.15],
    jointTurned: 0.12,
  },
  'structural-resonance': {
    growth: [1, 1],
    propellerOff: [0.03, 0.07, 0.38, 0.47, 0.05],
    inAir: [0.03, 0.07, 0.2, 0.6, 0.1],
    jointTurned: 0.06,
  },
  electrical: {
    growth: [0, 0.3],
    propellerOff: [0.006, 0.014, 0.05, 0.9, 0.03],
    inAir: [0.006, 0.014, 0.03, 0.93, 0.02],
    jointTurned: 0.02,
  },
  unexplained: {
    growth: [1, 1.5],
    propellerOff: [0.075, 0.175, 0.25, 0.4, 0.1],
    inAir: [0.06, 0.14, 0.2, 0.45, 0.15],
    jointTurned: 0.25,
  },
};
