import { MATERIALS } from '../line/materials.js';
import type { Material, ShaftLine } from '../line/types.js';
import { costsOf, withShaft, type LineChange } from './line-change.js';
import { mainSpan } from './main-span.js';
import { makeStatement } from './statement.js';
import { stockToBuy } from './stock-to-buy.js';

/** What shafts are sold in, what it costs by common practice, and what to mind. */
const OFFERS: readonly { readonly material: Material; readonly money: number; readonly mind: string }[] = [
  { material: MATERIALS['carbon steel'], money: 2, mind: ', kept oiled: it rusts' },
  { material: MATERIALS['stainless steel 304'], money: 2, mind: '' },
  { material: MATERIALS['titanium Ti-6Al-4V'], money: 4, mind: '' },
];

/** The main shaft of another metal in the same size. */
export function materialChanges(line: ShaftLine): LineChange[] {
  const span = mainSpan(line);
  if (!span) return [];
  return OFFERS.filter(({ material }) => !alike(material, span.shaft.material)).map(
    ({ material, money, mind }) => ({
      kind: 'material',
      heading: makeStatement(`Shaft of ${material.name} in place of ${span.shaft.material.name}`, {}),
      apply: (one) => withShaft(one, span.index, (shaft) => ({ ...shaft, material })),
      costs: costsOf({
        work: 3,
        money,
        destructive: 'reversible',
        takes: [makeStatement(`shaft out, a new one cut to length and threaded${mind}`, {})],
        buy: [],
      }),
      buys: (changed) => stockToBuy(changed, span.shaft.name),
    }),
  );
}

/** Stiffness and density within 2 %: grades of one metal. */
function alike(a: Material, b: Material): boolean {
  const near = (x: number, y: number) => Math.abs(x - y) <= 0.02 * Math.max(x, y);
  return near(a.youngsModulus, b.youngsModulus) && near(a.density, b.density);
}
