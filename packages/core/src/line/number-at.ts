import { describe } from '../internal/refuse.js';
import type { ShaftLine } from './types.js';

/** Reads and changes one number of a line. */
export interface NumberAt {
  readonly path: string;
  readonly read: (line: ShaftLine) => number;
  /** The line with the number changed; what the path does not pass is shared with the line given. */
  readonly write: (line: ShaftLine, value: number) => ShaftLine;
}

/**
 * The number at a path of a line, such as `shafts[1].supports[0].at`.
 *
 * @param path - field names and indices, as the faults of `parseShaftLine` name them
 * @returns `read` and `write`, both of which throw a RangeError where the path of that line leads to no number
 */
export function numberAt(path: string): NumberAt {
  const steps = path.split(/[.[\]]+/).filter((step) => step !== '');
  const refuse = (found: unknown): RangeError =>
    new RangeError(`numberAt: ${path} must lead to a number of the line, got ${describe(found)}`);
  const read = (line: ShaftLine): number => {
    let place: unknown = line;
    for (const step of steps) place = isBranch(place) ? place[step] : undefined;
    if (typeof place !== 'number') throw refuse(place);
    return place;
  };
  return {
    path,
    read,
    write: (line, value) => {
      read(line);
      return replace(line, { steps, depth: 0, value }) as ShaftLine;
    },
  };
}

function replace(
  place: unknown,
  {
    steps,
    depth,
    value,
  }: { readonly steps: readonly string[]; readonly depth: number; readonly value: number },
): unknown {
  const step = steps[depth];
  if (step === undefined || !isBranch(place)) return value;
  const inner = replace(place[step], { steps, depth: depth + 1, value });
  if (!Array.isArray(place)) return { ...place, [step]: inner };
  const copy: unknown[] = [...(place as readonly unknown[])];
  copy[Number(step)] = inner;
  return copy;
}

function isBranch(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null;
}
