import { checkPositive } from '../internal/checks.js';
import type { ShaftLine } from '../line/types.js';
import { assess } from './assess.js';
import { DEFAULT_MARGINS } from './excitations.js';
import { changedLine } from './line-change.js';
import { lineChanges } from './line-changes.js';
import { finishRemedy, rankRemedies } from './rank-remedies.js';
import { remedyPairs, type TriedChange } from './remedy-pairs.js';
import type { Remedy, RemedyOptions } from './remedy-types.js';
import { speedRemedies } from './speed-remedies.js';
import { supplyChanges } from './supply-changes.js';
import type { Assessment } from './types.js';

/**
 * Changes to a line, each assessed in full, ranked by what they gain against what they take; singly, and in pairs where no
 * single one is enough.
 *
 * worth = points / effort, effort = work + money/2 + d, d = 0, ½ or 2 for `no`, `reversible`, `cutting`;
 * points = 4 s + log₂(L₁/L₀) + (c₁ − c₀)/0.15 + (f₀ − f₁)/max(f₀, f₁, 0.0027) + (U₀ − U₁)/max(U₀, U₁) + b/2 − 8 |ΔΩ|/Ω, with s the steps of
 * the verdict, L the speed limit, c the distance to the nearest band as a share of the speed held within ±0.3, f the
 * fluctuation, U the unbalance force and b the bands that fall out of the throttle's reach.
 *
 * A remedy helps where it brings no `inside` of any kind that the line had not, weakens nothing that is too weak, makes no verdict
 * worse, and betters the verdict, or takes away a trouble and has points above 0; of a line that is clear already, where it raises the speed limit or the distance to a
 * band by 5 %, takes a quarter of the fluctuation or of the unbalance, or puts a band out of reach. `least` marks the one that is
 * clear at the wanted speed for the least work, of all changes and all pairs of them; what takes equal work is told apart
 * by effort.
 *
 * @param line - a checked line
 * @param options - `speed` in rad/s; `margins` and `torque` as in `assess`
 * @returns those that help, by worth; then those that do not, with why
 * @throws RangeError as `assess` does
 * @remarks Looked at: set screws, a lighter or balanced propeller, lighter joints, the next stock sizes of the longest span's
 *   shaft (bushes and tube follow), tube for solid, another metal, less overhang, a bush at its best place, the motor shimmed, two
 *   joints for one and one for two, yokes turned, another speed, one cell less. In a pair the bush stands where it is best
 *   alone, and there is no pair with another speed or supply. Where loads are not known they are not checked. The hull is not
 *   known: whether a tube, a bed or a bush has room is for the builder to see.
 * @example
 * const remedies = proposeRemedies(exampleLine(), { speed: 345 });
 * remedies[0].helps // → true
 * remedies.find(({ least }) => least).gains.verdict // → { before: 'inside', after: 'clear' }
 * @see order of costs: the ladder of fixes of builders' published accounts; weights of the formula are our choice
 */
export function proposeRemedies(line: ShaftLine, options: RemedyOptions): Remedy[] {
  const { speed, margins } = options;
  checkPositive('proposeRemedies: speed', speed);
  const before = assess(line, options);
  const judged = { line, assessment: before };
  const changes = lineChanges(line, { before, margins });
  const tried = changes.flatMap((change) => tryChange(line, change, options));
  const supply = supplyChanges(line, before).flatMap((change) => tryChange(line, change, options));
  const screen = { speed, margins: { ...DEFAULT_MARGINS, ...margins }, torque: before.loads?.torque };
  const pairs = before.verdict === 'clear' ? [] : remedyPairs({ line, tried, options, screen });
  return rankRemedies([
    ...[...tried, ...supply].map((one) => finishRemedy(judged, { ...one, kinds: [one.change.kind] })),
    ...pairs.map((pair) => finishRemedy(judged, pair)),
    ...speedRemedies(line, { before, options }).map((one) => finishRemedy(judged, one)),
  ]);
}

function tryChange(line: ShaftLine, change: TriedChange['change'], options: RemedyOptions): TriedChange[] {
  const changed = changedLine(line, [change], change.heading.sentence);
  if (!changed) return [];
  const assessment: Assessment = assess(changed, options);
  return [{ change, line: changed, assessment }];
}
