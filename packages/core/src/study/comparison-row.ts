import type { ComparedCell, LineComparisonRow } from './compare-lines-types.js';
import type { LineFigure } from './line-figures.js';
import type { FigureSpread } from './sample-comparison.js';
import { figure, makeStatement } from './statement.js';
import type { Statement } from './types.js';

/** Share of a value within which two count as alike whatever the tolerances; our choice. */
const ALIKE = 0.005;

export interface RowEntry {
  readonly value: number | undefined;
  readonly spread?: FigureSpread | undefined;
}

/** One figure of all lines against that of the first. */
export function comparisonRow(kind: LineFigure, entries: readonly RowEntry[]): LineComparisonRow {
  const { key, name, quantity, better } = kind;
  const [first] = entries;
  const cells = entries.map((entry, i): ComparedCell => {
    const change = first && changeOf(first, entry);
    const difference = first && change !== undefined ? differs(first, entry, better) : 'unknown';
    return {
      value: entry.value,
      change,
      ...(entry.spread ? { spread: entry.spread } : {}),
      difference,
      ...(first && i > 0 ? { statement: describe(kind, { first, entry, change, difference }) } : {}),
    };
  });
  return { key, name, quantity, better, cells, best: bestEntries(entries, better) };
}

function centre({ value, spread }: RowEntry): number | undefined {
  return value === undefined ? undefined : (spread?.median ?? value);
}

function changeOf(from: RowEntry, to: RowEntry): number | undefined {
  const [a, b] = [centre(from), centre(to)];
  if (a === undefined || b === undefined) return undefined;
  const change = a === b && Number.isFinite(a) ? 0 : b - a;
  return Number.isNaN(change) ? undefined : change;
}

function reach({ spread }: RowEntry): number {
  return spread ? (spread.high - spread.low) / 2 : 0;
}

/** What a change has to exceed to be one. */
function threshold(from: RowEntry, to: RowEntry): number {
  const size = Math.max(Math.abs(from.value ?? 0), Math.abs(to.value ?? 0));
  const alike = Number.isFinite(size) ? ALIKE * size : 0;
  const spread = Math.hypot(reach(from), reach(to));
  return Math.max(alike, Number.isNaN(spread) ? 0 : spread);
}

function differs(
  from: RowEntry,
  to: RowEntry,
  better: LineFigure['better'],
): 'better' | 'worse' | 'none' | 'unknown' {
  const change = changeOf(from, to);
  if (change === undefined) return 'unknown';
  if (Math.abs(change) <= threshold(from, to)) return 'none';
  return change > 0 === (better === 'larger') ? 'better' : 'worse';
}

/** Which entries hold the best value or one not told apart from it; none where all are alike. */
export function bestEntries(entries: readonly RowEntry[], better: LineFigure['better']): number[] {
  const known = entries.flatMap((entry, index) => {
    const at = centre(entry);
    return at === undefined ? [] : [{ entry, index, at: better === 'larger' ? at : -at }];
  });
  if (known.length < 2) return [];
  const leader = known.reduce((best, one) => (one.at > best.at ? one : best));
  const alike = known.filter(({ entry }) => differs(leader.entry, entry, better) !== 'worse');
  return alike.length === known.length ? [] : alike.map(({ index }) => index);
}

interface Told {
  readonly first: RowEntry;
  readonly entry: RowEntry;
  readonly change: number | undefined;
  readonly difference: ComparedCell['difference'];
}

function describe({ name, quantity }: LineFigure, { first, entry, change, difference }: Told): Statement {
  if (change === undefined) return makeStatement(`${name}: not to be compared.`, {});
  const figures = {
    change: figure(quantity, Math.abs(change)),
    spread: figure(quantity, threshold(first, entry)),
  };
  if (difference !== 'none') {
    const way = change > 0 ? 'more' : 'less';
    return makeStatement(`${name}: {change} ${way} than the first line, which is ${difference}.`, figures);
  }
  if (change === 0) return makeStatement(`${name}: no difference.`, figures);
  const why =
    (first.spread ?? entry.spread) ? 'the tolerances spread it by {spread}' : 'less than the model can tell';
  return makeStatement(`${name}: no difference shown; {change} apart, and ${why}.`, figures);
}
