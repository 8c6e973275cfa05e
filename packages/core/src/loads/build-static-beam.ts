import type { Shaft, ShaftLine } from '../line/types.js';
import { addBlock } from '../numerics/add-block.js';
import { createBand } from '../numerics/create-band.js';
import { factorBand } from '../numerics/factor-band.js';
import type { BandFactor } from '../numerics/types.js';

/** One element of a shaft, from its node to the next. */
export interface BeamPiece {
  readonly node: number;
  /** m */
  readonly length: number;
  /** Of (displacement, slope) at its motor end, then at its propeller end; row by row. */
  readonly matrix: readonly number[];
}

/** The developed line as a beam at rest, ready to be loaded. */
export interface StaticBeam {
  /** Of each node: its shaft, and m from the motor end of it. */
  readonly shaft: readonly number[];
  readonly at: readonly number[];
  /** First node of each shaft, and the count of nodes at the end. */
  readonly firstNode: readonly number[];
  readonly pieces: readonly BeamPiece[];
  /** Unknown of each node; −1 where it is held. */
  readonly displacement: readonly number[];
  readonly slope: readonly number[];
  readonly supports: readonly BeamSupport[];
  readonly factor: BandFactor;
}

export interface BeamSupport {
  readonly shaft: number;
  readonly support: number;
  readonly node: number;
  /** N/m; absent is rigid. */
  readonly stiffness?: number;
  /** N·m/rad against the slope; 0 is free to tilt. */
  readonly angularStiffness: number;
}

const HALF_BANDWIDTH = 3;
const SAME = 1e-9;
/** A disc or an elastic support this near to a node, over the developed length, sits on it: a shorter piece would drown in rounding. */
const CLOSE = 1e-3;

/**
 * Euler–Bernoulli beams along the developed line, hinged at universal joints, on rigid and elastic supports.
 *
 * Exact at its nodes for loads there and for even loads between them: ends, supports, discs, and the middles between.
 *
 * @throws NotPositiveDefiniteError if a part of the line is free to move
 * @see J. S. Przemieniecki, "Theory of Matrix Structural Analysis", 1968, §5.6
 */
export function buildStaticBeam(line: ShaftLine): StaticBeam {
  const nodes = { shaft: [] as number[], at: [] as number[], firstNode: [] as number[] };
  const pieces: BeamPiece[] = [];
  const developed = line.shafts.reduce((sum, { length }) => sum + length, 0);
  line.shafts.forEach((one, index) => {
    nodes.firstNode.push(nodes.at.length);
    const stiffness =
      (one.material.youngsModulus * Math.PI * (one.outerDiameter ** 4 - one.innerDiameter ** 4)) / 64;
    nodesOf(one, developed).forEach((place, i, all) => {
      const next = all[i + 1];
      if (next !== undefined)
        pieces.push(pieceOf({ node: nodes.at.length, length: next - place, stiffness }));
      nodes.shaft.push(index);
      nodes.at.push(place);
    });
  });
  nodes.firstNode.push(nodes.at.length);
  const supports = supportsOf(line, nodes);
  const freedoms = numberFreedoms(line, nodes, supports);
  const factor = assemble(line, { pieces, supports, ...freedoms, ...nodes });
  return { ...nodes, pieces, supports, ...freedoms, factor };
}

interface Nodes {
  readonly shaft: readonly number[];
  readonly at: readonly number[];
  readonly firstNode: readonly number[];
}

function nodesOf({ length, supports, discs }: Shaft, developed: number): number[] {
  const points = [0, length];
  const add = (place: number, clearance: number): void => {
    if (points.every((point) => Math.abs(point - place) > clearance)) points.push(place);
  };
  for (const { at, radialStiffness } of supports) if (radialStiffness === undefined) add(at, SAME * length);
  for (const { at } of [...supports, ...discs]) add(at, CLOSE * developed);
  points.sort((a, b) => a - b);
  return points.flatMap((point, i) => {
    const next = points[i + 1];
    return next === undefined ? [point] : [point, (point + next) / 2];
  });
}

function supportsOf(line: ShaftLine, nodes: Nodes): BeamSupport[] {
  return line.shafts.flatMap(({ supports }, shaft) =>
    supports.map(({ at, radialStiffness, angularStiffness = 0 }, support) => ({
      shaft,
      support,
      node: nodeAt(nodes, shaft, at),
      angularStiffness,
      ...(radialStiffness === undefined ? {} : { stiffness: radialStiffness }),
    })),
  );
}

/** The node of a shaft at a place, or next to it. */
export function nodeAt({ at, firstNode }: Nodes, shaft: number, place: number): number {
  let nearest = firstNode[shaft] ?? 0;
  for (let node = nearest; node < (firstNode[shaft + 1] ?? 0); node++)
    if (Math.abs((at[node] ?? 0) - place) < Math.abs((at[nearest] ?? 0) - place)) nearest = node;
  return nearest;
}

/** As in the whirl model, the slope ahead of a joint comes before the displacement that it shares: half-bandwidth 3. */
function numberFreedoms(
  line: ShaftLine,
  { shaft }: Nodes,
  supports: readonly BeamSupport[],
): { displacement: number[]; slope: number[]; count: number } {
  const held = new Set(supports.filter(({ stiffness }) => stiffness === undefined).map(({ node }) => node));
  const clamped = new Set(
    supports
      .filter((one) => line.shafts[one.shaft]?.supports[one.support]?.fixesSlope === true)
      .map(({ node }) => node),
  );
  const displacement: number[] = [];
  const slope: number[] = [];
  let count = 0;
  const number = (isHeld: boolean): number => (isHeld ? -1 : count++);
  const jointAfter = (node: number) =>
    node + 1 < shaft.length && node >= 0 && shaft[node] !== shaft[node + 1]
      ? line.joints[shaft[node] ?? 0]
      : undefined;
  shaft.forEach((_, node) => {
    const after = jointAfter(node);
    const before = jointAfter(node - 1);
    if (after) {
      slope.push(number(clamped.has(node) || (after.kind === 'rigid' && clamped.has(node + 1))));
      displacement.push(number(held.has(node) || held.has(node + 1)));
    } else {
      displacement.push(before ? (displacement[node - 1] ?? -1) : number(held.has(node)));
      slope.push(before?.kind === 'rigid' ? (slope[node - 1] ?? -1) : number(clamped.has(node)));
    }
  });
  return { displacement, slope, count };
}

type Parts = Omit<StaticBeam, 'factor'> & { readonly count: number };

function assemble(line: ShaftLine, parts: Parts): BandFactor {
  const { pieces, supports, displacement, slope, count, shaft } = parts;
  const band = createBand(count, HALF_BANDWIDTH);
  for (const piece of pieces) {
    const { node } = piece;
    const rows = [displacement[node], slope[node], displacement[node + 1], slope[node + 1]].map(
      (row) => row ?? -1,
    );
    addBlock(band, { rows, entries: piece.matrix });
  }
  for (const { node, stiffness = 0, angularStiffness } of supports) {
    addBlock(band, { rows: [displacement[node] ?? -1], entries: [stiffness] });
    addBlock(band, { rows: [slope[node] ?? -1], entries: [angularStiffness] });
  }
  shaft.forEach((index, node) => {
    const spring = line.joints[index]?.bendingStiffness ?? 0;
    if (shaft[node + 1] !== index + 1 || line.joints[index]?.kind !== 'flexible' || spring === 0) return;
    addBlock(band, {
      rows: [slope[node] ?? -1, slope[node + 1] ?? -1],
      entries: [spring, -spring, -spring, spring],
    });
  });
  return factorBand(band);
}

function pieceOf({
  node,
  length: h,
  stiffness,
}: Pick<BeamPiece, 'node' | 'length'> & { readonly stiffness: number }): BeamPiece {
  const end = (12 * stiffness) / h ** 3;
  const side = (6 * stiffness) / h ** 2;
  const own = (4 * stiffness) / h;
  const far = own / 2;
  const matrix = [
    end,
    side,
    -end,
    side,
    side,
    own,
    -side,
    far,
    -end,
    -side,
    end,
    -side,
    side,
    far,
    -side,
    own,
  ];
  return { node, length: h, matrix };
}
