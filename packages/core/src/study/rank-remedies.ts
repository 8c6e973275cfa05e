import type { ShaftLine } from '../line/types.js';
import type { LineChange } from './line-change.js';
import { remedyGains, type Judged } from './remedy-gains.js';
import { whyNot } from './remedy-judgement.js';
import type { Remedy, RemedyKind } from './remedy-types.js';
import { nextLimit, remedySummary } from './remedy-words.js';
import type { Statement } from './types.js';

/** A change with the line that it makes and what `assess` says of that. */
export interface Tried extends Judged {
  readonly change: Pick<LineChange, 'heading' | 'costs' | 'buys'>;
  readonly kinds: readonly RemedyKind[];
}

/** What a change gains, costs and uncovers. */
export function finishRemedy(before: Judged, { change, kinds, line, assessment }: Tried): Remedy {
  const { heading } = change;
  const costs = { ...change.costs, buy: shoppingList(change, line) };
  const gains = remedyGains(before, { line, assessment });
  const against = whyNot({ before: before.assessment, after: assessment, gains });
  return {
    title: heading.sentence,
    heading,
    kinds,
    line,
    speed: assessment.speed,
    gains,
    costs,
    worth: gains.points / costs.effort,
    helps: against === undefined,
    least: false,
    summary: remedySummary({ before: before.assessment, after: assessment }, gains),
    next: nextLimit(before.assessment, assessment),
    ...(against ? { whyNot: against } : {}),
    assessment,
  };
}

/** Everything to buy, each once. */
function shoppingList({ costs, buys }: Tried['change'], line: ShaftLine): Statement[] {
  const all = [...(buys?.(line) ?? []), ...costs.buy];
  return all.filter(({ sentence }, i) => all.findIndex((one) => one.sentence === sentence) === i);
}

/** Those that help first, by worth; the one of least work that is clear at the wanted speed marked. */
export function rankRemedies(remedies: readonly Remedy[]): Remedy[] {
  const [least] = remedies
    .filter(
      ({ helps, gains, kinds }) =>
        helps &&
        gains.verdict.before !== 'clear' &&
        gains.verdict.after === 'clear' &&
        !kinds.includes('speed'),
    )
    .sort((a, b) => a.costs.work - b.costs.work || a.costs.effort - b.costs.effort || b.worth - a.worth);
  return remedies
    .map((remedy) => ({ ...remedy, least: remedy === least }))
    .sort(
      (a, b) => Number(b.helps) - Number(a.helps) || b.worth - a.worth || a.costs.effort - b.costs.effort,
    );
}
