import type { ShaftLine } from '../line/types.js';
import type { LineTrial } from './trials-types.js';
import type { Cause, Finding } from './types.js';

/** The trials of the ladder, in the order in which builders take things off and put them on. */
export type LadderTest =
  | 'tighten-screws'
  | 'run-slower'
  | 'drive-still'
  | 'press-panels'
  | 'propeller-off'
  | 'joint-turned'
  | 'motor-alone'
  | 'motor-and-joint'
  | 'in-water'
  | 'roll-shaft'
  | 'turn-by-hand'
  | 'align-with-sleeve'
  | 'halve-angle'
  | 'propeller-turned'
  | 'other-propeller';

/** What became of the shake; for tests without a run, whether the fault was found. */
export type LadderOutcome =
  | 'goes'
  | 'grows less'
  | 'stays'
  | 'grows'
  | 'falls faster'
  | 'falls with the square'
  | 'falls slower'
  | 'changes'
  | 'found'
  | 'not found';

export interface CauseChance {
  readonly cause: Cause;
  /** 0 … 1; all together 1. */
  readonly chance: number;
}

/** One trial that was done, and what it showed. */
export interface LadderStep {
  readonly test: LadderTest;
  /** Chance of each outcome: one of them 1 where it was entered, shared where a recording was read. */
  readonly outcomes: readonly { readonly outcome: LadderOutcome; readonly chance: number }[];
  readonly from: 'entered' | 'recordings';
}

/** Where a search stands: plain data, to be kept and taken up again. */
export interface LadderState {
  /** Likeliest first. */
  readonly causes: readonly CauseChance[];
  readonly steps: readonly LadderStep[];
  /** Trials that this line cannot have. */
  readonly ruledOut: readonly LadderTest[];
}

export interface LadderStart {
  /** Of `diagnose` or `diagnoseTrials`; without any, what is common in small lines. */
  readonly findings?: readonly Finding[];
  readonly line?: ShaftLine;
  /** Trials done before, with their outcomes. */
  readonly done?: readonly LadderAnswer[];
}

/** An outcome as someone saw it, or the recordings before and after to read it from. */
export type LadderAnswer =
  | { readonly test: LadderTest; readonly outcome: LadderOutcome }
  | {
      readonly test: LadderTest;
      readonly before: Pick<LineTrial, 'recording' | 'speed'>;
      readonly after: Pick<LineTrial, 'recording' | 'speed'>;
    };

/** What one outcome of a trial would mean. */
export interface LadderMeaning {
  readonly outcome: LadderOutcome;
  /** A sentence. */
  readonly means: string;
  /** 0 … 1, how likely it is by what is known so far. */
  readonly chance: number;
  /** The likeliest causes after it. */
  readonly causes: readonly CauseChance[];
}

/** A trial to do next. */
export interface LadderTrial {
  readonly test: LadderTest;
  /** What to do, a sentence or two. */
  readonly instruction: string;
  readonly takes: { readonly minutes: number; readonly tools: readonly string[] };
  readonly outcomes: readonly LadderMeaning[];
  /** Bits by which it would narrow the causes down, on average. */
  readonly gain: number;
  /** Safety words. */
  readonly caution: string;
  /** Whether the outcome can be read from recordings before and after. */
  readonly recordable: boolean;
}

/** One cause stands out. */
export interface LadderConclusion extends CauseChance {
  /** What led there, a sentence a step. */
  readonly reasons: readonly string[];
  /** The cheapest fix first. */
  readonly fixes: readonly string[];
}

export interface NextTrial {
  /** Best gain for the work; absent where nothing that is left would tell more. */
  readonly trial?: LadderTrial;
  /** The others, best first. */
  readonly others: readonly LadderTrial[];
  readonly conclusion?: LadderConclusion;
}
