import { parseShaftLine } from '../line/parse-shaft-line.js';
import type { Shaft, ShaftLine } from '../line/types.js';
import type { Destructive, RemedyCosts, RemedyKind } from './remedy-types.js';
import type { Statement } from './types.js';

/** A change of a line, before it is assessed. */
export interface LineChange {
  readonly kind: RemedyKind;
  readonly heading: Statement;
  /** Throws a RangeError where the changed line cannot be built. */
  readonly apply: (line: ShaftLine) => ShaftLine;
  readonly costs: RemedyCosts;
  /** What there is to buy besides, where that depends on what else is changed. */
  readonly buys?: (changed: ShaftLine) => readonly Statement[];
}

/** What a destructive change counts in effort; our choice. */
const DESTRUCTION: Readonly<Record<Destructive, number>> = { no: 0, reversible: 0.5, cutting: 2 };

/** Costs with their effort. */
export function costsOf(costs: Omit<RemedyCosts, 'effort'>): RemedyCosts {
  return { ...costs, effort: costs.work + costs.money / 2 + DESTRUCTION[costs.destructive] };
}

/** The line with one of its shafts changed. */
export function withShaft(line: ShaftLine, index: number, change: (shaft: Shaft) => Shaft): ShaftLine {
  return { ...line, shafts: line.shafts.map((shaft, i) => (i === index ? change(shaft) : shaft)) };
}

/** The changed line, checked and named after the change; undefined where it cannot be built. */
export function changedLine(
  line: ShaftLine,
  changes: readonly Pick<LineChange, 'apply'>[],
  name: string,
): ShaftLine | undefined {
  try {
    const changed = changes.reduce((one, { apply }) => apply(one), line);
    return parseShaftLine({ ...changed, name: `${line.name}: ${name}` });
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}
