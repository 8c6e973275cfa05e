import type { Shaft, ShaftLine } from '../line/types.js';
import { longestElement } from './longest-element.js';
import { section, type Section } from './section.js';

/**
 * The line cut into beam elements. Nodes run from the motor end; each shaft has its own, so a joint has two.
 * Nodes k and k + 1 of one shaft are the ends of an element.
 */
export interface LineMesh {
  /** Index of the shaft of each node. */
  readonly shaft: Int32Array;
  /** m from the motor end of that shaft. */
  readonly at: Float64Array;
  /** m from the motor end of the line. */
  readonly station: Float64Array;
  /** First node of each shaft, and the count of nodes at the end. */
  readonly firstNode: readonly number[];
  /** One for each shaft. */
  readonly sections: readonly Section[];
}

export interface MeshOptions {
  /** rad/s, the highest whirl frequency that the mesh must carry. */
  readonly frequency: number;
  /** Cuts every element into this many. */
  readonly refine: number;
}

/** A disc, spring or clamp this close to a node, over the developed length, gets no node of its own. */
const CLOSE = 1e-3;
const SAME = 1e-9;

/** Elements short against the bending wave at the highest frequency, with nodes where the line changes. */
export function lineMesh(line: ShaftLine, { frequency, refine }: MeshOptions): LineMesh {
  const developed = line.shafts.reduce((sum, { length }) => sum + length, 0);
  const sections: Section[] = [];
  const shaft: number[] = [];
  const at: number[] = [];
  const station: number[] = [];
  const firstNode: number[] = [];
  let start = 0;
  line.shafts.forEach((one, index) => {
    firstNode.push(at.length);
    const own = section(one);
    sections.push(own);
    for (const place of nodesOf(nodePoints(one, developed), {
      longest: longestElement(own, frequency),
      refine,
    })) {
      shaft.push(index);
      at.push(place);
      station.push(start + place);
    }
    start += one.length;
  });
  firstNode.push(at.length);
  return {
    shaft: Int32Array.from(shaft),
    at: Float64Array.from(at),
    station: Float64Array.from(station),
    firstNode,
    sections,
  };
}

/**
 * Places on a shaft that must be nodes, ascending: its ends and rigid supports always; clamps, discs and springs unless
 * a node is close by. A very short element between free nodes would drown its neighbours in rounding. The shape
 * functions of the element carry a disc or a spring inside it just as well; a clamp holds the slope of the near node.
 */
function nodePoints({ length, supports, discs }: Shaft, developed: number): number[] {
  const points = [0, length];
  const add = (place: number, clearance: number): void => {
    if (points.every((point) => Math.abs(point - place) > clearance * developed)) points.push(place);
  };
  const rigid = supports.filter(({ radialStiffness }) => radialStiffness === undefined);
  const clamps = supports.filter(({ fixesSlope }) => fixesSlope === true);
  for (const { at } of rigid) add(at, SAME);
  for (const { at } of [...clamps, ...discs, ...supports]) add(at, CLOSE);
  return points.sort((a, b) => a - b);
}

function nodesOf(
  points: readonly number[],
  size: { readonly longest: number; readonly refine: number },
): number[] {
  const nodes: number[] = [points[0] ?? 0];
  for (let i = 1; i < points.length; i++) {
    const from = points[i - 1] ?? 0;
    const to = points[i] ?? 0;
    const pieces = size.refine * Math.max(1, Math.ceil((to - from) / size.longest));
    for (let k = 1; k < pieces; k++) nodes.push(from + ((to - from) * k) / pieces);
    nodes.push(to);
  }
  return nodes;
}
