import { refusal } from '../internal/refuse.js';
import { numberAt } from '../line/number-at.js';
import type { ShaftLine } from '../line/types.js';
import { quantile } from '../numerics/quantile.js';
import { createRandom } from '../numerics/random.js';
import { assess } from './assess.js';
import type { CompareLinesOptions, ComparedCell, ComparedFigureKey } from './compare-lines-types.js';
import { drawLine, toleranceAxes } from './draw-line.js';
import { LINE_FIGURES } from './line-figures.js';
import type { Tolerance } from './tolerance-types.js';
import type { Verdict } from './types.js';

export type FigureSpread = NonNullable<ComparedCell['spread']>;

/** How the figures of one line spread over its tolerances. */
export interface LineSpread {
  readonly figures: ReadonlyMap<ComparedFigureKey, FigureSpread>;
  readonly chances: Readonly<Record<Verdict, number>>;
}

type Tolerances = Readonly<Record<string, Tolerance>>;

/** The tolerances of each line: its own, or those of the shared ones whose path it has. */
export function tolerancesOf(
  lines: readonly ShaftLine[],
  tolerances: CompareLinesOptions['tolerances'],
): readonly (Tolerances | undefined)[] {
  if (tolerances === undefined) return lines.map(() => undefined);
  if (isList(tolerances)) {
    if (tolerances.length === lines.length) return tolerances;
    throw refusal('compareLines: tolerances', `a list of ${lines.length}, one for each line`, tolerances);
  }
  for (const path of Object.keys(tolerances)) {
    if (!lines.some((line) => has(line, path)))
      throw refusal(`compareLines: tolerances['${path}']`, 'a number of one line or more', undefined);
  }
  return lines.map((line) =>
    Object.fromEntries(Object.entries(tolerances).filter(([path]) => has(line, path))),
  );
}

function isList(tolerances: Tolerances | readonly Tolerances[]): tolerances is readonly Tolerances[] {
  return Array.isArray(tolerances);
}

function has(line: ShaftLine, path: string): boolean {
  try {
    numberAt(path).read(line);
    return true;
  } catch (error) {
    if (error instanceof RangeError) return false;
    throw error;
  }
}

/** Monte Carlo: every measure drawn within its tolerance, the line assessed anew. */
export function sampleComparison(
  line: ShaftLine,
  tolerances: Tolerances,
  {
    speed,
    margins,
    samples,
    seed,
  }: CompareLinesOptions & { readonly samples: number; readonly seed: number },
): LineSpread {
  const axes = toleranceAxes(line, tolerances, 'compareLines');
  const random = createRandom(seed);
  const columns = new Map(LINE_FIGURES.map(({ key }) => [key, [] as number[]]));
  const counts: Record<Verdict, number> = { clear: 0, near: 0, inside: 0 };
  for (let i = 0; i < samples; i++) {
    const drawn = drawLine(line, { axes, random, caller: 'compareLines' });
    const assessment = assess(drawn.line, { speed, ...(margins ? { margins } : {}) });
    counts[assessment.verdict] += 1 / samples;
    for (const { key, of } of LINE_FIGURES) {
      const value = of(drawn.line, assessment);
      if (value !== undefined) columns.get(key)?.push(value);
    }
  }
  const known = [...columns].filter(([, values]) => values.length > 0);
  const figures = new Map(known.map(([key, values]) => [key, spreadOf(values)]));
  return { figures, chances: counts };
}

function spreadOf(values: readonly number[]): FigureSpread {
  const sorted = Float64Array.from(values).sort();
  return { low: quantile(sorted, 0.05), median: quantile(sorted, 0.5), high: quantile(sorted, 0.95) };
}
