import type {
  ComparedFigureKey,
  ComparedLine,
  LineComparison,
  LineComparisonRow,
} from './compare-lines-types.js';
import { bestEntries } from './comparison-row.js';
import { figure, makeStatement } from './statement.js';
import type { Verdict } from './types.js';

const VERDICTS: readonly Verdict[] = ['clear', 'near', 'inside'];

/** Each verdict after 'it is'. */
const IN_WORDS: Readonly<Record<Verdict, string>> = {
  clear: 'clear',
  near: 'close to a band or a limit',
  inside: 'inside a band or beyond what a part bears',
};

/** What settles it between lines with one verdict, in this order, with the words for having more of it. */
const DECIDING: readonly (readonly [ComparedFigureKey, string])[] = [
  ['speed-limit', 'its speed limit, {value}, is the highest of them'],
  ['clearance', 'it keeps the largest distance of them from a band, {value}'],
  ['fluctuation', 'its propeller turns most evenly of them, within {value}'],
];

interface Compared {
  readonly speed: number;
  readonly lines: readonly ComparedLine[];
  readonly rows: readonly LineComparisonRow[];
}

/** The better line and why, or that none is shown to be. */
export function comparisonSummary({
  speed,
  lines,
  rows,
}: Compared): Pick<LineComparison, 'summary' | 'better'> {
  const verdict = VERDICTS.find((one) => lines.some((line) => line.verdict === one)) ?? 'inside';
  const leaders = lines.flatMap((line, i) => (line.verdict === verdict ? [i] : []));
  const at = figure('speed', speed);
  const [only] = leaders;
  if (leaders.length === 1 && only !== undefined) return oneVerdict(only, { speed, lines, rows });
  let left = leaders;
  for (const [key, words] of DECIDING) {
    const row = rows.find((one) => one.key === key);
    if (!row) continue;
    const cells = left.map((index) => row.cells[index] ?? { value: undefined });
    const best = bestEntries(cells, row.better).flatMap((place) => left[place] ?? []);
    if (best.length === 0) continue;
    left = best;
    const [winner] = left;
    if (left.length > 1 || winner === undefined) continue;
    const both = leaders.length === 2 ? 'both are' : `${leaders.length} lines are`;
    const template = `At {speed} “${lines[winner]?.name ?? ''}” is the better line: ${both} ${IN_WORDS[verdict]}, but ${words}.`;
    const value = figure(row.quantity, row.cells[winner]?.value ?? NaN);
    return { summary: makeStatement(template, { speed: at, value }), better: winner };
  }
  const names = left.map((index) => `“${lines[index]?.name ?? ''}”`).join(' and ');
  const template = `At {speed} no difference is shown between ${names}: each is ${IN_WORDS[verdict]}.`;
  return { summary: makeStatement(template, { speed: at }), better: undefined };
}

/** One line alone has the best verdict. */
function oneVerdict(
  index: number,
  { speed, lines, rows }: Compared,
): Pick<LineComparison, 'summary' | 'better'> {
  const line = lines[index];
  const other = lines.find((_, i) => i !== index);
  const rest =
    lines.length === 2 && other
      ? `“${other.name}” is ${IN_WORDS[other.verdict]}`
      : 'no other line is as good';
  const limit = rows.find(({ key }) => key === 'speed-limit')?.cells[index]?.value;
  const bounded = limit !== undefined && Number.isFinite(limit);
  const more = bounded ? ' Its speed limit is {limit}.' : '';
  const template = `At {speed} “${line?.name ?? ''}” is the better line: it is ${IN_WORDS[line?.verdict ?? 'inside']}, and ${rest}.${more}`;
  const figures = { speed: figure('speed', speed), ...(bounded ? { limit: figure('speed', limit) } : {}) };
  return { summary: makeStatement(template, figures), better: index };
}
