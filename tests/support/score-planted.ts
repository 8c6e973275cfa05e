import { diagnose, diagnoseTrials, type Cause, type Finding } from '@sternline/core';
import { plantedLines, unpackRecording, type PlantedFile } from './planted-trials.js';

/** What was said of one planted trial or set. */
export interface Scored {
  readonly seed: number;
  readonly planted: readonly Cause[];
  readonly visible: boolean;
  readonly tellable: boolean;
  readonly findings: readonly Pick<Finding, 'cause' | 'confidence' | 'rivals'>[];
}

export function scoreSingles(file: PlantedFile): Scored[] {
  const lines = plantedLines(file);
  return file.single.map(({ seed, planted, visible, tellable, line, axial, speed, rate, channels }) => ({
    seed,
    planted,
    visible,
    tellable,
    findings: diagnose({
      recording: unpackRecording(channels, rate),
      speed,
      ...(line === null ? {} : { line: lines[line]! }),
      ...(axial === null ? {} : { axial }),
    }).findings,
  }));
}

export function scoreSets(file: PlantedFile): Scored[] {
  const lines = plantedLines(file);
  return file.sets.map(({ seed, planted, visible, line, axial, rate, trials }) => ({
    seed,
    planted,
    visible,
    tellable: true,
    findings: diagnoseTrials({
      trials: trials.map(({ channels, speed, ...conditions }) => ({
        recording: unpackRecording(channels, rate),
        speed,
        conditions,
      })),
      ...(line === null ? {} : { line: lines[line]! }),
      ...(axial === null ? {} : { axial }),
    }).findings,
  }));
}

export interface Rate {
  readonly hits: number;
  readonly of: number;
}

/** Trials in which the first finding names a planted cause, of those picked. */
export function namedFirst(scored: readonly Scored[]): Rate {
  const hits = scored.filter(({ planted, findings }) => findings[0] && planted.includes(findings[0].cause));
  return { hits: hits.length, of: scored.length };
}

/** Recordings of noise alone with any finding. */
export function falseAlarms(scored: readonly Scored[]): Rate {
  const still = scored.filter(({ planted }) => planted.length === 0);
  return { hits: still.filter(({ findings }) => findings.length > 0).length, of: still.length };
}

export interface CalibrationBin {
  readonly from: number;
  readonly count: number;
  /** Mean confidence. */
  readonly said: number;
  /** Share of findings whose cause was planted. */
  readonly was: number;
}

/** Every finding of every trial, by tenths of confidence. */
export function calibration(scored: readonly Scored[]): CalibrationBin[] {
  const all = scored.flatMap(({ planted, findings }) =>
    findings.map(({ cause, confidence }) => ({ confidence, hit: Number(planted.includes(cause)) })),
  );
  return Array.from({ length: 10 }, (_, i) => {
    const own = all.filter(({ confidence }) => Math.min(9, Math.floor(10 * confidence)) === i);
    const mean = (pick: (one: (typeof own)[number]) => number): number =>
      own.reduce((sum, one) => sum + pick(one), 0) / own.length;
    return {
      from: i / 10,
      count: own.length,
      said: mean((one) => one.confidence),
      was: mean((one) => one.hit),
    };
  }).filter(({ count }) => count > 0);
}
