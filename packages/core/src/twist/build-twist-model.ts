import type { Shaft, ShaftLine } from '../line/types.js';
import { isPropeller } from './is-propeller.js';
import { polarSecondMoment } from './polar-second-moment.js';
import type { LinePlaces } from './types.js';
import { wetPolarInertia } from './wet-polar-inertia.js';

/** The line as a free chain in twist. */
export interface TwistModel {
  readonly places: LinePlaces;
  /** Unknown of each node; the two nodes of a joint that is rigid in twist share one. */
  readonly freedom: Int32Array;
  readonly freedoms: number;
  /** N·m/rad from each node to the next: GJ/h of a bar, the spring of a joint, Infinity where a joint is rigid in twist. */
  readonly stiffness: Float64Array;
  /** s, the time that a twist takes from each node to the next, h √(ρ/G) along a bar; 0 across a joint. */
  readonly time: Float64Array;
  /** kg·m² at each node: rotor, discs with their water, half a joint. */
  readonly lumps: Float64Array;
  /** Node of the propeller; −1 without one. */
  readonly propeller: number;
}

/** rad, how much of a wave one bar may hold at the highest frequency: under half a wave it has no mode of its own. */
const BAR_PHASE = 2.2;
/** Places closer than this share of the shaft's length are one node. */
const CLOSE = 1e-6;

/**
 * Cuts the line into bars, springs and lumps: shafts with nodes at their ends and discs, joints as springs or rigid with
 * half of their inertia on either side, the motor's rotor at the motor end.
 *
 * @param options - `frequency` in rad/s, the highest that will be asked for; it only keeps bars short, since they are exact
 *   at any
 */
export function buildTwistModel(line: ShaftLine, { frequency }: { readonly frequency: number }): TwistModel {
  const shaft: number[] = [];
  const at: number[] = [];
  const station: number[] = [];
  const lumps: number[] = [];
  let start = 0;
  let propeller = -1;
  line.shafts.forEach((one, index) => {
    const first = at.length;
    for (const place of nodesOf(one, frequency)) {
      shaft.push(index);
      at.push(place);
      station.push(start + place);
      lumps.push(0);
    }
    for (const disc of one.discs) {
      const node = nearest(at, first, disc.at);
      lumps[node] = (lumps[node] ?? 0) + wetPolarInertia(line, { shaft: index, disc });
      if (isPropeller(line, { shaft: index, disc })) propeller = node;
    }
    start += one.length;
  });
  lumps[0] = (lumps[0] ?? 0) + (line.motor?.rotorInertia ?? 0);
  const nodes = { shaft, at, station };
  halveJoints(line, nodes, lumps);
  const freedom = numberFreedoms(line, shaft);
  const places = {
    shaft: Int32Array.from(shaft),
    at: Float64Array.from(at),
    station: Float64Array.from(station),
  };
  return {
    places,
    freedom,
    freedoms: (freedom.at(-1) ?? 0) + 1,
    ...links(line, nodes),
    lumps: Float64Array.from(lumps),
    propeller,
  };
}

interface Nodes {
  readonly shaft: readonly number[];
  readonly at: readonly number[];
}

function halveJoints(line: ShaftLine, { shaft }: Nodes, lumps: number[]): void {
  for (let node = 0; node + 1 < shaft.length; node++) {
    const joint = line.joints[shaft[node] ?? 0];
    if (shaft[node] === shaft[node + 1] || !joint) continue;
    lumps[node] = (lumps[node] ?? 0) + joint.polarInertia / 2;
    lumps[node + 1] = (lumps[node + 1] ?? 0) + joint.polarInertia / 2;
  }
}

function links(line: ShaftLine, { shaft, at }: Nodes): Pick<TwistModel, 'stiffness' | 'time'> {
  const stiffness = new Float64Array(shaft.length - 1);
  const time = new Float64Array(shaft.length - 1);
  const moments = line.shafts.map(polarSecondMoment);
  for (let node = 0; node < stiffness.length; node++) {
    const index = shaft[node] ?? 0;
    const material = line.shafts[index]?.material;
    if (shaft[node + 1] !== index || !material) {
      stiffness[node] = line.joints[index]?.torsionalStiffness ?? Infinity;
    } else {
      const length = (at[node + 1] ?? 0) - (at[node] ?? 0);
      stiffness[node] = (material.shearModulus * (moments[index] ?? 0)) / length;
      time[node] = length * Math.sqrt(material.density / material.shearModulus);
    }
  }
  return { stiffness, time };
}

function nodesOf({ length, discs, material }: Shaft, frequency: number): number[] {
  const longest = (BAR_PHASE * Math.sqrt(material.shearModulus / material.density)) / frequency;
  const points = [0, length];
  for (const { at } of discs)
    if (points.every((point) => Math.abs(point - at) > CLOSE * length)) points.push(at);
  points.sort((a, b) => a - b);
  const nodes = [0];
  for (let i = 1; i < points.length; i++) {
    const from = points[i - 1] ?? 0;
    const to = points[i] ?? 0;
    const pieces = Math.max(1, Math.ceil((to - from) / longest));
    for (let k = 1; k < pieces; k++) nodes.push(from + ((to - from) * k) / pieces);
    nodes.push(to);
  }
  return nodes;
}

function nearest(at: readonly number[], first: number, place: number): number {
  let best = first;
  for (let node = first; node < at.length; node++)
    if (Math.abs((at[node] ?? 0) - place) < Math.abs((at[best] ?? 0) - place)) best = node;
  return best;
}

function numberFreedoms(line: ShaftLine, shaft: readonly number[]): Int32Array {
  const freedom = new Int32Array(shaft.length);
  let next = 0;
  for (let node = 1; node < shaft.length; node++) {
    const before = shaft[node - 1] ?? 0;
    const joined = shaft[node] !== before && line.joints[before]?.torsionalStiffness === undefined;
    if (!joined) next += 1;
    freedom[node] = next;
  }
  return freedom;
}
