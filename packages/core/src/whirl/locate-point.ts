import { elementRows } from './element-rows.js';
import { elementShape, type ElementShape } from './element-shape.js';
import type { LineFreedoms } from './line-freedoms.js';
import type { LineMesh } from './line-mesh.js';

/** A point inside an element: the unknowns of the element's ends, and the shape functions there. */
export interface LocatedPoint {
  readonly rows: readonly number[];
  readonly shape: ElementShape;
}

/** The element that holds a point of a shaft, and its shape functions there. */
export function locatePoint(
  { mesh, freedoms }: { readonly mesh: LineMesh; readonly freedoms: LineFreedoms },
  { shaft, at }: { readonly shaft: number; readonly at: number },
): LocatedPoint {
  const section = mesh.sections[shaft];
  const last = (mesh.firstNode[shaft + 1] ?? 0) - 2;
  let node = mesh.firstNode[shaft] ?? 0;
  while (node < last && (mesh.at[node + 1] ?? 0) <= at) node += 1;
  const length = (mesh.at[node + 1] ?? 0) - (mesh.at[node] ?? 0);
  const fraction = (at - (mesh.at[node] ?? 0)) / length;
  if (!section) throw new RangeError(`locatePoint: no shaft ${shaft}`);
  return { rows: elementRows(freedoms, node), shape: elementShape(section, { length, fraction }) };
}
