import type { Recording, ShaftLine } from '@sternline/core';
import type { LineAdvice } from './advice.js';
import type { LayoutTolerances } from './layout-tolerances.js';
import type { LineMeasures } from './measures.js';
import type { RecordingPart } from './recording-part.js';

/** Display units; the model itself is SI throughout. */
export type Units = 'metric' | 'inch';

/** A shaft line under an id that survives renaming. */
export interface ProjectLine {
  readonly id: string;
  readonly line: ShaftLine;
  /** What was measured in the hull for it. */
  readonly measures?: LineMeasures;
  /** What is being found out about it: a balancing, resonances, the search for a cause. */
  readonly advice?: LineAdvice;
}

/** One run of the model at known conditions, with what was recorded in it. */
export interface Trial {
  readonly id: string;
  readonly name: string;
  readonly lineId: string;
  /** rad/s, shaft speed during the run, where the builder knows it. */
  readonly speed?: number;
  /** Where and how: bench or water, where the phone lay. */
  readonly note: string;
  /** Whether it was computed from the line with a stated seed rather than recorded. */
  readonly simulated: boolean;
  /** What the device granted, in sentences, where the page itself recorded it. */
  readonly granted?: readonly string[];
  /** The stretch that is read; the whole unless given. */
  readonly part?: RecordingPart;
  readonly recording: Recording;
}

/** Everything the page holds. Plain data; `app-root` alone owns it. */
export interface Project {
  readonly format: 'sternline-project';
  readonly version: 1;
  readonly name: string;
  readonly note: string;
  readonly units: Units;
  /** rad/s */
  readonly wantedSpeed: number;
  /** How far the measures of every line may be off, where the builder has said so. */
  readonly tolerances?: LayoutTolerances;
  readonly lines: readonly ProjectLine[];
  /** Id of the line that is being worked on. */
  readonly openLine: string;
  readonly trials: readonly Trial[];
}
