import type { ShaftLine } from '@sternline/core';
import { judgeLine } from './judge-line.js';

/** A shaft speed at which the line is predicted to whirl, and the order that drives it there. */
export interface PredictedCritical {
  /** rad/s */
  readonly speed: number;
  readonly name: string;
}

/**
 * Where a line is predicted to whirl, to stand beside what was measured in a run.
 *
 * @param line - a checked line; none has no prediction
 * @param speed - rad/s, for which the page has assessed it already
 * @returns the lowest of each order, ascending
 */
export function predictedCriticals(line: ShaftLine | undefined, speed: number): readonly PredictedCritical[] {
  const assessment = line && judgeLine(line, speed).assessment;
  if (!assessment) return [];
  const lowest = new Map<number, PredictedCritical>();
  for (const { speed: at, order } of [...assessment.criticalSpeeds].sort((a, b) => a.speed - b.speed)) {
    if (!lowest.has(order)) lowest.set(order, { speed: at, name: `whirl by ${order}×` });
  }
  return [...lowest.values()];
}
