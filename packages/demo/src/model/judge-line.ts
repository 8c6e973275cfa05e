import { assess, noLoadSpeed, parseShaftLine, ShaftLineError } from '@sternline/core';
import type { Assessment, LineFault, ShaftLine } from '@sternline/core';

/** A line as it was entered: one that can be, or what is wrong with it. */
export type CheckedLine =
  | { readonly line: ShaftLine; readonly faults?: undefined }
  | { readonly line?: undefined; readonly faults: readonly LineFault[] };

/** Checks a line as the page holds it after an edit. */
export function checkLine(line: ShaftLine): CheckedLine {
  try {
    return { line: parseShaftLine(line) };
  } catch (error) {
    if (error instanceof ShaftLineError) return { faults: error.faults };
    throw error;
  }
}

/** What is computed for a line at a speed, or why it could not be. */
export type Judgement =
  | { readonly assessment: Assessment; readonly failure?: undefined }
  | { readonly assessment?: undefined; readonly failure: string };

const kept = new WeakMap<ShaftLine, { readonly speed: number; readonly judgement: Judgement }>();

/**
 * Assesses a line; the same line at the same speed is worked out once.
 *
 * @param line - a checked line
 * @param speed - rad/s
 */
export function judgeLine(line: ShaftLine, speed: number): Judgement {
  const before = kept.get(line);
  if (before?.speed === speed) return before.judgement;
  const judgement = judge(line, speed);
  kept.set(line, { speed, judgement });
  return judgement;
}

function judge(line: ShaftLine, speed: number): Judgement {
  try {
    return { assessment: assess(line, { speed }) };
  } catch (error) {
    return { failure: error instanceof Error ? error.message : String(error) };
  }
}

/**
 * The fastest that the speed ruler needs to show, in rad/s.
 *
 * @param line - a checked line
 * @param wanted - rad/s
 */
export function rulerTop(line: ShaftLine, wanted: number): number {
  return Math.max(noLoadSpeed(line) ?? 1.5 * wanted, wanted);
}
