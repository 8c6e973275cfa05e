import type { ShaftLine } from '../line/types.js';
import { bushChanges } from './bush-changes.js';
import { DEFAULT_MARGINS } from './excitations.js';
import { fastenerChanges } from './fastener-changes.js';
import { layoutChanges } from './layout-changes.js';
import type { LineChange } from './line-change.js';
import { massChanges } from './mass-changes.js';
import { materialChanges } from './material-changes.js';
import { overhangChanges } from './overhang-changes.js';
import { sectionChanges } from './section-changes.js';
import { shimChanges } from './shim-changes.js';
import type { Assessment, Margins } from './types.js';

/**
 * Every change of a line that can stand in a pair, in the order in which two are made: those that add or take shafts come
 * last, so that the places of all others hold.
 */
export function lineChanges(
  line: ShaftLine,
  { before, margins }: { readonly before: Assessment; readonly margins: Partial<Margins> | undefined },
): LineChange[] {
  const { speed } = before;
  return [
    ...fastenerChanges(line, before),
    ...massChanges(line, { speed }),
    ...sectionChanges(line),
    ...materialChanges(line),
    ...overhangChanges(line),
    ...bushChanges(line, { speed, margins: { ...DEFAULT_MARGINS, ...margins } }),
    ...shimChanges(line, { speed }),
    ...layoutChanges(line),
  ];
}
