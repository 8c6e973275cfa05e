import type { Joint, ShaftLine, Support } from '../line/types.js';
import type { LineMesh } from './line-mesh.js';

/** Which unknown each node's displacement and slope is; −1 where a support holds it at zero. */
export interface LineFreedoms {
  readonly displacement: Int32Array;
  readonly slope: Int32Array;
  readonly count: number;
}

const HELD = -1;

/**
 * Numbers the unknowns from the motor end. At a joint both shafts share the displacement; a rigid joint shares the
 * slope too. The slope before a joint comes ahead of the shared displacement: no element then spans more than four
 * neighbouring unknowns, so the matrices have half-bandwidth 3.
 */
export function lineFreedoms(line: ShaftLine, mesh: LineMesh): LineFreedoms {
  const held = heldNodes(line, mesh);
  const nodes = mesh.at.length;
  const displacement = new Int32Array(nodes);
  const slope = new Int32Array(nodes);
  let count = 0;
  const number = (isHeld: boolean): number => (isHeld ? HELD : count++);
  for (let node = 0; node < nodes; node++) {
    const after = jointAt(node, line, mesh);
    const before = jointAt(node - 1, line, mesh);
    if (after) {
      const rigid = after.kind === 'rigid';
      slope[node] = number(held.slope.has(node) || (rigid && held.slope.has(node + 1)));
      displacement[node] = number(held.displacement.has(node) || held.displacement.has(node + 1));
    } else {
      displacement[node] = before ? (displacement[node - 1] ?? HELD) : number(held.displacement.has(node));
      slope[node] = before?.kind === 'rigid' ? (slope[node - 1] ?? HELD) : number(held.slope.has(node));
    }
  }
  return { displacement, slope, count };
}

/** The joint between this node and the next, if the next is on another shaft. */
function jointAt(node: number, line: ShaftLine, mesh: LineMesh): Joint | undefined {
  const here = mesh.shaft[node];
  if (here === undefined || mesh.shaft[node + 1] === here) return undefined;
  return line.joints[here];
}

function heldNodes(line: ShaftLine, mesh: LineMesh): { displacement: Set<number>; slope: Set<number> } {
  const displacement = new Set<number>();
  const slope = new Set<number>();
  line.shafts.forEach(({ supports }, shaft) => {
    for (const support of supports) {
      const node = nodeNearest(mesh, shaft, support);
      if (support.radialStiffness === undefined) displacement.add(node);
      if (support.fixesSlope === true) slope.add(node);
    }
  });
  return { displacement, slope };
}

function nodeNearest(mesh: LineMesh, shaft: number, { at }: Support): number {
  let nearest = mesh.firstNode[shaft] ?? 0;
  const end = mesh.firstNode[shaft + 1] ?? 0;
  for (let node = nearest; node < end; node++) {
    if (Math.abs((mesh.at[node] ?? 0) - at) < Math.abs((mesh.at[nearest] ?? 0) - at)) nearest = node;
  }
  return nearest;
}
