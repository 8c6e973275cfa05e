import { joinStatements } from './join-statements.js';
import { costsOf, type LineChange } from './line-change.js';
import type { Destructive } from './remedy-types.js';

/** Least destructive first. */
const DESTRUCTION: readonly Destructive[] = ['no', 'reversible', 'cutting'];

/** Two changes in one: the first is made first; work and money add, the more destructive one counts. */
export function pairChanges(first: LineChange, second: LineChange): Omit<LineChange, 'kind'> {
  const { template, figures } = second.heading;
  const lower = { template: template.charAt(0).toLowerCase() + template.slice(1), figures };
  const [a, b] = [first.costs, second.costs];
  const worst = Math.max(DESTRUCTION.indexOf(a.destructive), DESTRUCTION.indexOf(b.destructive));
  return {
    heading: joinStatements([first.heading, lower], ', and '),
    apply: (line) => second.apply(first.apply(line)),
    buys: (changed) => [...(first.buys?.(changed) ?? []), ...(second.buys?.(changed) ?? [])],
    costs: costsOf({
      work: a.work + b.work,
      money: a.money + b.money,
      destructive: DESTRUCTION[worst] ?? 'cutting',
      takes: [...a.takes, ...b.takes],
      buy: [...a.buy, ...b.buy],
    }),
  };
}
