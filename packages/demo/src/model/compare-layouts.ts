import { compareLines, type LineComparison } from '@sternline/core';
import { judgeLine } from './judge-line.js';
import type { ProjectLine } from './project.js';

/** Layouts side by side, those that could be computed. */
export interface LayoutComparison {
  readonly entries: readonly ProjectLine[];
  /** Absent where fewer than two are left. */
  readonly comparison?: LineComparison;
  /** Names of those that could not be computed. */
  readonly left: readonly string[];
}

/**
 * Sets layouts side by side at one speed, as entered; what measures spread is left to the worker.
 *
 * @param lines - checked lines, the one that the others are held against in front
 * @param speed - rad/s
 */
export function compareLayouts(lines: readonly ProjectLine[], speed: number): LayoutComparison {
  const entries = lines.filter(({ line }) => judgeLine(line, speed).assessment !== undefined);
  const left = lines.filter((entry) => !entries.includes(entry)).map(({ line }) => line.name);
  if (entries.length < 2) return { entries, left };
  const comparison = compareLines(
    entries.map(({ line }) => line),
    { speed },
  );
  return { entries, comparison, left };
}
