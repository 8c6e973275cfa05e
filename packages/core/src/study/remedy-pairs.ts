import type { ShaftLine } from '../line/types.js';
import { assess } from './assess.js';
import { couldBeClear, type ScreenTask } from './could-be-clear.js';
import { changedLine, type LineChange } from './line-change.js';
import { pairChanges } from './pair-changes.js';
import type { RemedyKind, RemedyOptions } from './remedy-types.js';
import type { Assessment, Reason } from './types.js';

/** A change on its own, assessed. */
export interface TriedChange {
  readonly change: LineChange;
  readonly line: ShaftLine;
  readonly assessment: Assessment;
}

/** Two changes together, assessed. */
export interface TriedPair extends Omit<TriedChange, 'change'> {
  readonly change: Omit<LineChange, 'kind'>;
  readonly kinds: readonly [RemedyKind, RemedyKind];
}

/** Once the least work is known, this many more pairs are looked at. */
const FURTHER = 12;
/** And this many are listed. */
const LISTED = 4;
/** Changes that move no band: a pair with one has the bands of the other. */
const BANDLESS: readonly RemedyKind[] = ['fastener', 'balance'];

interface PairTask {
  readonly line: ShaftLine;
  readonly tried: readonly TriedChange[];
  readonly options: RemedyOptions;
  readonly screen: ScreenTask;
}

/**
 * Pairs that are clear at the speed where neither change is so alone, by work and then by effort. A change that is clear
 * alone takes less work than any pair with it, so that the pair of least work is always among them.
 */
export function remedyPairs({ line, tried, options, screen }: PairTask): TriedPair[] {
  const isClear = ({ assessment }: TriedChange) => assessment.verdict === 'clear';
  const alone = tried.filter(isClear).map(({ change }) => change.costs.work);
  const pairs = candidates(tried.filter((one) => !isClear(one)));
  const found: TriedPair[] = [];
  let least = Math.min(...alone);
  let further = 0;
  for (const { first, second, change } of pairs) {
    if (change.costs.work > least && (++further > FURTHER || found.length >= LISTED)) break;
    const pair = tryPair({ line, first, second, change, options, screen });
    if (!pair) continue;
    found.push(pair);
    least = Math.min(least, change.costs.work);
  }
  return found;
}

interface Candidate {
  readonly first: TriedChange;
  readonly second: TriedChange;
  readonly change: Omit<LineChange, 'kind'>;
}

function candidates(tried: readonly TriedChange[]): Candidate[] {
  return tried
    .flatMap((first, i) =>
      tried
        .slice(i + 1)
        .filter((second) => second.change.kind !== first.change.kind && bandsAllow(first, second))
        .map((second) => ({ first, second, change: pairChanges(first.change, second.change) })),
    )
    .sort(
      (a, b) => a.change.costs.work - b.change.costs.work || a.change.costs.effort - b.change.costs.effort,
    );
}

function bandsAllow(first: TriedChange, second: TriedChange): boolean {
  const bandless = [first, second].filter(({ change }) => BANDLESS.includes(change.kind));
  if (bandless.length === 0) return true;
  return [first, second].every((one) => bandless.includes(one) || !one.assessment.reasons.some(isBand));
}

function isBand({ kind, severity }: Reason): boolean {
  return (kind === 'band' || kind === 'above-first-whirl') && (severity === 'inside' || severity === 'near');
}

function tryPair({
  line,
  first,
  second,
  change,
  options,
  screen,
}: Candidate & Omit<PairTask, 'tried'>): TriedPair | undefined {
  const changed = changedLine(line, [change], change.heading.sentence);
  if (!changed || !couldBeClear(changed, screen)) return undefined;
  const assessment = assess(changed, options);
  if (assessment.verdict !== 'clear') return undefined;
  return { change, kinds: [first.change.kind, second.change.kind], line: changed, assessment };
}
