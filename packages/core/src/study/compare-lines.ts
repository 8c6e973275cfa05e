import { checkPositive, checkWhole } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import type { ShaftLine } from '../line/types.js';
import { assess } from './assess.js';
import { comparisonRow } from './comparison-row.js';
import { comparisonSummary } from './comparison-summary.js';
import type { CompareLinesOptions, LineComparison } from './compare-lines-types.js';
import { LINE_FIGURES } from './line-figures.js';
import { sampleComparison, tolerancesOf } from './sample-comparison.js';

const MOST_SAMPLES = 100_000;

/**
 * Lines side by side at one speed: every figure that decides, its change against the first line, whether that change is
 * larger than what the tolerances spread, and which line is the better one.
 *
 * Where tolerances are given, each line is drawn anew and assessed `samples` times. A change Δ of medians counts as none
 * where |Δ| ≤ √(h₀² + h²), h being half of the range from the 5th to the 95th percentile of either line: the half-widths
 * of two independent errors combine by their squares. Without tolerances, and with them too, a change of at most 0.5 %
 * counts as none: no model of a small line is better than that.
 *
 * @param lines - two or more checked lines
 * @param options - `speed` in rad/s; `tolerances` by path, shared or one record for each line; `samples` for each line, 1 to
 *   100 000, default 200; `seed`, default 1; `margins` as in `assess`
 * @returns a first sentence, the assessment of each line, and rows in SI
 * @throws RangeError where there are fewer than two lines, an option is out of its domain, or a tolerance leads to no number
 * @remarks Measures are drawn independently, those of two lines too. Measures that both share (one hull) then make two lines look
 *   less different than they are, never more. The better line has the better verdict; then the higher speed limit, the
 *   larger distance to a band, the smaller fluctuation, each only where the change is shown.
 * @example
 * const built = exampleLine();
 * const [motor, shaft] = built.shafts;
 * const six = parseShaftLine({ ...built, name: 'six', shafts: [motor, { ...shaft, outerDiameter: 0.006, supports: shaft.supports.map(({ bore, ...rest }) => rest) }] });
 * const { lines, better, rows } = compareLines([built, six], { speed: 345 });
 * lines.map(({ verdict }) => verdict) // → ['inside', 'clear']
 * better // → 1
 * rows[0].key // → 'speed-limit'
 * rows[0].cells[1].change // → 129 rad/s
 * @see JCGM 100:2008, 5.1.2 (independent errors add by their squares); the 0.5 % is our choice
 */
export function compareLines(lines: readonly ShaftLine[], options: CompareLinesOptions): LineComparison {
  const { speed, margins, samples = 200, seed = 1 } = options;
  if (lines.length < 2) throw refusal('compareLines: lines', 'a list of two or more', lines);
  checkPositive('compareLines: speed', speed);
  checkWhole('compareLines: samples', samples, [1, MOST_SAMPLES]);
  const tolerances = tolerancesOf(lines, options.tolerances);
  const spreads = lines.map((line, i) => {
    const own = tolerances[i];
    return own && sampleComparison(line, own, { ...options, samples, seed });
  });
  const compared = lines.map((line, i) => {
    const assessment = assess(line, { speed, ...(margins ? { margins } : {}) });
    const { chances } = spreads[i] ?? {};
    return { name: line.name, verdict: assessment.verdict, ...(chances ? { chances } : {}), assessment };
  });
  const rows = LINE_FIGURES.flatMap((figure) => {
    const entries = lines.map((line, i) => {
      const one = compared[i];
      const value = one && figure.of(line, one.assessment);
      return { value: Number.isNaN(value) ? undefined : value, spread: spreads[i]?.figures.get(figure.key) };
    });
    return entries.some(({ value }) => value !== undefined) ? [comparisonRow(figure, entries)] : [];
  });
  return { ...comparisonSummary({ speed, lines: compared, rows }), lines: compared, rows };
}
