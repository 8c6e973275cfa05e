import type { Tolerance } from './tolerance-types.js';
import type { Assessment, Margins, Quantity, Statement, Verdict } from './types.js';

export interface CompareLinesOptions {
  /** rad/s, the wanted shaft speed. */
  readonly speed: number;
  /**
   * By the path of the measure, as in `toleranceStudy`: one record for all lines, of which each takes the paths that it
   * has, or a list with one record for each line. Absent, nothing spreads.
   */
  readonly tolerances?: Readonly<Record<string, Tolerance>> | readonly Readonly<Record<string, Tolerance>>[];
  /** For each line. Default 200. */
  readonly samples?: number;
  /** Default 1. */
  readonly seed?: number;
  readonly margins?: Partial<Margins>;
}

export type ComparedFigureKey =
  | 'speed-limit'
  | 'clearance'
  | 'first-critical-unbalance'
  | 'first-critical-joints'
  | 'first-critical-blades'
  | 'fluctuation'
  | 'joint-angle'
  | 'torque-swing'
  | 'rattle'
  | 'strength'
  | 'fastener'
  | 'bush'
  | 'mass';

/** One figure of one line, and how it differs from that of the first line. */
export interface ComparedCell {
  /** SI, as entered; undefined where the line has no such figure. */
  readonly value: number | undefined;
  /** This less the first line's, medians where there is a spread; undefined where either is missing or both are infinite. */
  readonly change: number | undefined;
  /** Where tolerances are given: 5 of 100 samples lie below `low`, 5 above `high`. */
  readonly spread?: { readonly low: number; readonly median: number; readonly high: number };
  /** Of the first line itself it is 'none'; 'unknown' where there is no change to tell. */
  readonly difference: 'better' | 'worse' | 'none' | 'unknown';
  /** The change in words; absent for the first line. */
  readonly statement?: Statement;
}

export interface LineComparisonRow {
  readonly key: ComparedFigureKey;
  readonly name: string;
  readonly quantity: Quantity;
  readonly better: 'larger' | 'smaller';
  /** One for each line. */
  readonly cells: readonly ComparedCell[];
  /** Which lines hold the best value or one that is not told apart from it; none where all are alike. */
  readonly best: readonly number[];
}

export interface ComparedLine {
  readonly name: string;
  readonly verdict: Verdict;
  /** Share of the samples with each verdict; absent without tolerances. */
  readonly chances?: Readonly<Record<Verdict, number>>;
  readonly assessment: Assessment;
}

export interface LineComparison {
  /** Which line is the better one, and why; that none is shown to be is an answer. */
  readonly summary: Statement;
  /** Index of the better line; undefined where none is shown to be. */
  readonly better: number | undefined;
  /** In the order given. */
  readonly lines: readonly ComparedLine[];
  /** Rows that no line has are left out. */
  readonly rows: readonly LineComparisonRow[];
}
