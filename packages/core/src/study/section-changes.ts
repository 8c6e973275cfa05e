import { STOCK } from '../line/stock.js';
import type { Shaft, ShaftLine } from '../line/types.js';
import { costsOf, withShaft, type LineChange } from './line-change.js';
import { mainSpan } from './main-span.js';
import { figure, makeStatement } from './statement.js';
import { stockToBuy } from './stock-to-buy.js';
import type { Statement } from './types.js';

/** m; sizes nearer than this are one. */
const SAME = 1e-6;
/** How many sizes up are looked at. */
const UP = 2;

interface Section {
  readonly outerDiameter: number;
  readonly innerDiameter: number;
}

/** The main shaft one and two stock sizes thicker, one thinner, and as a tube. */
export function sectionChanges(line: ShaftLine): LineChange[] {
  const span = mainSpan(line);
  if (!span) return [];
  const { shaft, index } = span;
  const solid = shaft.innerDiameter === 0;
  const stock: readonly Section[] = solid ? STOCK.shaftDiameters.map(bar) : STOCK.shaftTubes;
  const thicker = stock
    .filter(({ outerDiameter }) => outerDiameter > shaft.outerDiameter + SAME)
    .slice(0, UP);
  const thinner = stock.filter(({ outerDiameter }) => outerDiameter < shaft.outerDiameter - SAME).slice(-1);
  const tube = STOCK.shaftTubes.find(({ outerDiameter }) => outerDiameter > shaft.outerDiameter - SAME);
  const sections = [...thicker, ...thinner, ...(solid && tube ? [tube] : [])];
  return sections.map((section) => sectionChange(index, shaft, section));
}

function bar(outerDiameter: number): Section {
  return { outerDiameter, innerDiameter: 0 };
}

function sectionChange(index: number, shaft: Shaft, section: Section): LineChange {
  const { outerDiameter, innerDiameter } = section;
  const hollow = innerDiameter > 0;
  const figures = {
    diameter: figure('length', outerDiameter),
    inner: figure('length', innerDiameter),
    present: figure('length', shaft.outerDiameter),
  };
  const what = hollow ? 'Tube of {diameter} outside, {inner} inside,' : 'Shaft of {diameter}';
  const present =
    shaft.innerDiameter > 0 ? 'the tube of {present}' : hollow ? 'the solid {present}' : '{present}';
  return {
    kind: 'section',
    heading: makeStatement(`${what} in place of ${present}`, figures),
    apply: (line) => withShaft(line, index, (own) => resized(own, section)),
    costs: costsOf({ ...effortOf(shaft, section), ...parts(shaft, section) }),
    buys: (changed) => stockToBuy(changed, shaft.name),
  };
}

/** Bushes and the stern tube follow the shaft, with the clearances that they have. */
function resized(shaft: Shaft, section: Section): Shaft {
  const more = section.outerDiameter - shaft.outerDiameter;
  const tubeBore = sternTube(shaft, section)?.innerDiameter ?? shaft.tubeBore;
  return {
    ...shaft,
    ...section,
    supports: shaft.supports.map((support) =>
      support.bore === undefined ? support : { ...support, bore: support.bore + more },
    ),
    ...(tubeBore === undefined ? {} : { tubeBore }),
  };
}

/** The stern tube that a thicker shaft needs; a thinner one turns in the tube that is there. */
function sternTube({ tubeBore, outerDiameter }: Shaft, section: Section): Section | undefined {
  const more = section.outerDiameter - outerDiameter;
  if (tubeBore === undefined || more <= SAME) return undefined;
  const needed = tubeBore + more;
  const stock = STOCK.sternTubes.find(({ innerDiameter }) => innerDiameter > needed - SAME);
  return stock ?? { innerDiameter: needed, outerDiameter: needed };
}

/** Common practice, no source: a thicker shaft takes tube and bushes with it, another of the same size does not. */
function effortOf(
  shaft: Shaft,
  { outerDiameter, innerDiameter }: Section,
): { work: number; money: number; destructive: 'reversible' | 'cutting' } {
  const more = outerDiameter - shaft.outerDiameter;
  if (more > SAME) return { work: 5, money: 3, destructive: 'cutting' };
  return { work: 3, money: innerDiameter > 0 || more < -SAME ? 2 : 1, destructive: 'reversible' };
}

function parts(shaft: Shaft, section: Section): { takes: Statement[]; buy: Statement[] } {
  const { outerDiameter, innerDiameter } = section;
  const figures = { diameter: figure('length', outerDiameter), inner: figure('length', innerDiameter) };
  const hollow = innerDiameter > 0;
  const tube = sternTube(shaft, section);
  const same = Math.abs(outerDiameter - shaft.outerDiameter) <= SAME;
  const takes = [
    ...(tube ? ['stern tube out of the hull, a wider one in, lined up and bonded'] : []),
    ...(same ? [] : ['bushes, joint half and propeller hub bored for {diameter}']),
    hollow
      ? 'shaft cut to length, its ends plugged and turned for joint and thread'
      : 'shaft cut to length and threaded',
  ];
  const buy = [
    ...(same || shaft.supports.length === 0
      ? []
      : [
          makeStatement('{count} bushes for {diameter}', {
            ...figures,
            count: figure('count', shaft.supports.length),
          }),
        ]),
    ...(tube ? [tubeToBuy(tube)] : []),
  ];
  return { takes: takes.map((words) => makeStatement(words, figures)), buy };
}

function tubeToBuy({ outerDiameter, innerDiameter }: Section): Statement {
  const figures = { outer: figure('length', outerDiameter), inner: figure('length', innerDiameter) };
  const stocked = outerDiameter > innerDiameter;
  return makeStatement(
    stocked ? 'brass stern tube {outer} × {inner}' : 'stern tube with a bore of {inner}',
    figures,
  );
}
