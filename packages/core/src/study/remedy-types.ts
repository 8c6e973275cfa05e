import type { ShaftLine } from '../line/types.js';
import type { Assessment, Margins, Statement, Verdict } from './types.js';

export interface RemedyOptions {
  /** rad/s, the wanted shaft speed. */
  readonly speed: number;
  readonly margins?: Partial<Margins>;
  /** N·m, mean torque at that speed, as in `assess`. */
  readonly torque?: number;
}

/** What a remedy changes: of each kind at most one stands in a pair. */
export type RemedyKind =
  | 'fastener'
  | 'propeller'
  | 'balance'
  | 'joint'
  | 'section'
  | 'material'
  | 'overhang'
  | 'bush'
  | 'shim'
  | 'layout'
  | 'yokes'
  | 'speed'
  | 'supply';

/** `no`: parts are swapped or turned; `reversible`: it can be put back; `cutting`: material goes, or the hull is opened. */
export type Destructive = 'no' | 'reversible' | 'cutting';

export interface RemedyCosts {
  /** 1, minutes on the bench, to 5, the tube out of the hull; a pair adds its two. */
  readonly work: number;
  /** 1, nothing or next to nothing, to 5; a pair adds its two. */
  readonly money: number;
  readonly destructive: Destructive;
  /** What the work is, in order. */
  readonly takes: readonly Statement[];
  /** What to buy, in stock sizes. */
  readonly buy: readonly Statement[];
  /** work + money / 2 + 0, ½ or 2 for what it destroys. */
  readonly effort: number;
}

export interface Before<T> {
  readonly before: T;
  readonly after: T;
}

export interface RemedyGains {
  readonly verdict: Before<Verdict>;
  /** rad/s; `gain` is after less before. */
  readonly speedLimit: Before<number> & { readonly gain: number };
  /** Share of the speed to the nearest edge of a band, negative inside one. */
  readonly clearance: Before<number>;
  /** max − min of the speed ratio. */
  readonly fluctuation: Before<number>;
  /** N, unbalance of all discs at the speed, as if in one plane. */
  readonly unbalanceForce: Before<number>;
  /** Bands between the speed and full throttle; absent where full throttle is not known. */
  readonly bandsInReach?: Before<number>;
  /** What all these come to; the formula stands at `proposeRemedies`. */
  readonly points: number;
}

export interface Remedy {
  /** `heading` in the trade's units. */
  readonly title: string;
  readonly heading: Statement;
  /** One, or two for a pair. */
  readonly kinds: readonly RemedyKind[];
  /** The changed line, as `parseShaftLine` gives it. */
  readonly line: ShaftLine;
  /** rad/s: the wanted speed, but for a remedy of the kind `speed`. */
  readonly speed: number;
  readonly gains: RemedyGains;
  readonly costs: RemedyCosts;
  /** points / effort */
  readonly worth: number;
  /** Whether it is worth doing at all at this speed, and makes nothing unsafe elsewhere. */
  readonly helps: boolean;
  /** Whether it takes the least work of all that are clear at the wanted speed. */
  readonly least: boolean;
  /** What it does, in figures. */
  readonly summary: Statement;
  /** The next limit or band in order after it. */
  readonly next: Statement;
  /** Why it does not help; where `helps` is false. */
  readonly whyNot?: Statement;
  /** The changed line in full, at `speed`. */
  readonly assessment: Assessment;
}
