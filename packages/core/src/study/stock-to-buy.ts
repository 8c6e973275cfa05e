import type { ShaftLine } from '../line/types.js';
import { figure, makeStatement } from './statement.js';
import type { Statement } from './types.js';

/** The bar or tube that one shaft of a line is made from, by its name: its index moves with the layout. */
export function stockToBuy(line: ShaftLine, name: string): readonly Statement[] {
  const shaft = line.shafts.find((one) => one.name === name);
  if (!shaft) return [];
  const { outerDiameter, innerDiameter, material } = shaft;
  const figures = { diameter: figure('length', outerDiameter), inner: figure('length', innerDiameter) };
  const shape = innerDiameter > 0 ? 'tube {diameter} × {inner}' : 'bar {diameter}';
  return [makeStatement(`${material.name} ${shape}`, figures)];
}
