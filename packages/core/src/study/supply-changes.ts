import { throttleFor } from '../drive/throttle-for.js';
import type { ShaftLine } from '../line/types.js';
import { costsOf, type LineChange } from './line-change.js';
import { figure, makeStatement } from './statement.js';
import type { Assessment } from './types.js';

/** V, nominal, of lithium polymer, lithium iron, lead and nickel cells. */
const CELLS: readonly number[] = [3.7, 3.2, 2, 1.2];
/** Lead batteries are sold whole; a cell fewer is not to be had. */
const LEAD = 2;
/** Share by which a supply may differ from whole cells. */
const NOMINAL = 0.02;

/** One cell fewer, where the wanted speed stays within reach: bands above it are then out of the throttle's reach. */
export function supplyChanges(line: ShaftLine, { speed, drive }: Assessment): LineChange[] {
  const { supply } = line;
  if (!supply || drive?.throttle === undefined) return [];
  const kinds = CELLS.filter((one) => isWhole(supply.voltage / one));
  const [cell] = kinds;
  if (cell === undefined || kinds.length > 1 || cell === LEAD) return [];
  const voltage = Number((cell * (Math.round(supply.voltage / cell) - 1)).toFixed(3));
  const change = (one: ShaftLine): ShaftLine => ({ ...one, supply: { ...supply, voltage } });
  if (!(voltage > 0) || !reaches(change(line), speed)) return [];
  const figures = { voltage: figure('voltage', voltage), present: figure('voltage', supply.voltage) };
  return [
    {
      kind: 'supply',
      heading: makeStatement('Supply of {voltage} in place of {present}', figures),
      apply: change,
      costs: costsOf({
        work: 1,
        money: 3,
        destructive: 'no',
        takes: [makeStatement('pack swapped, controller set for its cells', {})],
        buy: [makeStatement('pack of {voltage}', figures)],
      }),
    },
  ];
}

function isWhole(cells: number): boolean {
  return Math.abs(cells - Math.round(cells)) < NOMINAL;
}

/** A motor that would no longer start has no running point at all. */
function reaches(line: ShaftLine, speed: number): boolean {
  try {
    return throttleFor(line, { speed }) !== undefined;
  } catch (error) {
    if (error instanceof RangeError) return false;
    throw error;
  }
}
