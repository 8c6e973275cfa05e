import type { Assessment, Excitation } from '@sternline/core';
import { judgeLine } from './judge-line.js';
import type { ProjectLine } from './project.js';
import type { ScreenQuantity } from './units.js';

/** One row of a comparison: a figure of every layout, and which is best. */
export interface ComparedFigure {
  readonly name: string;
  readonly quantity: ScreenQuantity;
  /** SI; undefined where the line has no such figure. */
  readonly values: readonly (number | undefined)[];
  /** Which columns hold the best value; empty where all are alike. */
  readonly best: readonly number[];
}

/** Layouts at one speed, figure by figure. */
export interface Comparison {
  readonly names: readonly string[];
  /** undefined where a layout could not be computed */
  readonly assessments: readonly (Assessment | undefined)[];
  readonly figures: readonly ComparedFigure[];
}

/**
 * Sets layouts side by side at one speed.
 *
 * @param lines - checked lines
 * @param speed - rad/s
 */
export function compareLayouts(lines: readonly ProjectLine[], speed: number): Comparison {
  const found = lines.map(({ line }) => judgeLine(line, speed).assessment);
  const row = (
    name: string,
    quantity: ScreenQuantity,
    { of, best }: { of: (assessment: Assessment) => number | undefined; best: 'largest' | 'smallest' },
  ): ComparedFigure => {
    const values = found.map((assessment) => (assessment ? of(assessment) : undefined));
    return { name, quantity, values, best: bestOf(values, best) };
  };
  return {
    names: lines.map(({ line }) => line.name),
    assessments: found,
    figures: [
      row('Speed limit', 'speed', { of: (one) => one.speedLimit.speed, best: 'largest' }),
      row('First whirl, driven by unbalance', 'speed', {
        of: (one) => firstOf(one, 'unbalance'),
        best: 'largest',
      }),
      row('First whirl, driven by the joints', 'speed', {
        of: (one) => firstOf(one, 'joints'),
        best: 'largest',
      }),
      row('First whirl, driven by the blades', 'speed', {
        of: (one) => firstOf(one, 'blades'),
        best: 'largest',
      }),
      row('Swing of the propeller’s speed', 'share', {
        of: (one) => one.fluctuation.degree,
        best: 'smallest',
      }),
      row('Largest joint angle', 'angle', { of: largestAngle, best: 'smallest' }),
    ],
  };
}

function largestAngle({ joints }: Assessment): number {
  return Math.max(0, ...joints.map(({ angle }) => angle));
}

function firstOf({ criticalSpeeds }: Assessment, excitation: Excitation): number | undefined {
  const speeds = criticalSpeeds
    .filter((found) => found.excitation === excitation)
    .map((found) => found.speed);
  return speeds.length > 0 ? Math.min(...speeds) : undefined;
}

/** Shares of a value within which two are as good as each other. */
const ALIKE = 0.005;

function bestOf(values: readonly (number | undefined)[], best: 'largest' | 'smallest'): number[] {
  const known = values.filter((value) => value !== undefined);
  if (known.length < 2) return [];
  const target = best === 'largest' ? Math.max(...known) : Math.min(...known);
  const close = (value: number) => value === target || Math.abs(value - target) <= ALIKE * Math.abs(target);
  const columns = values.flatMap((value, index) => (value !== undefined && close(value) ? [index] : []));
  return columns.length === values.length ? [] : columns;
}
