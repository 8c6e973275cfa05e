import type { ShaftLine } from '../line/types.js';
import { addBlock } from '../numerics/add-block.js';
import { createBand } from '../numerics/create-band.js';
import type { SymmetricBand } from '../numerics/types.js';
import { beamElement, type BeamElement } from './beam-element.js';
import { elementRows } from './element-rows.js';
import { expectedFrequency } from './expected-frequency.js';
import { lineFreedoms, type LineFreedoms } from './line-freedoms.js';
import { lineMesh, type LineMesh } from './line-mesh.js';
import { locatePoint } from './locate-point.js';
import { outerSquare } from './outer-square.js';
import { wetDiscs } from './wet-discs.js';

/**
 * The line as matrices over its free displacements (m) and slopes (rad), supports already taken out.
 *
 * A point that whirls in a circle obeys M q̈ − iΩ G q̇ + K q = 0 with q = y + iz: steady whirl q = φ e^{iωt} at shaft
 * speed Ω gives (K + ωΩ G − ω² M) φ = 0, ω > 0 forward and ω < 0 backward.
 */
export interface WhirlModel {
  readonly mesh: LineMesh;
  readonly freedoms: LineFreedoms;
  /** K, N/m and so on. */
  readonly stiffness: SymmetricBand;
  /** M, mass and diametral inertia. */
  readonly mass: SymmetricBand;
  /** G, polar inertia. */
  readonly gyroscopic: SymmetricBand;
  /** rad/s, the highest whirl frequency that the mesh was made for. */
  readonly frequency: number;
}

export interface WhirlModelOptions {
  /** rad/s, the highest whirl frequency to carry; an estimate of the fourth one if absent. */
  readonly frequency?: number;
  /** Cuts every element into this many. Default 1. */
  readonly refine?: number;
}

const HALF_BANDWIDTH = 3;
/** The elements of one stretch are equal but for rounding, and share their matrices. */
const SAME_LENGTH = 1e-12;

/**
 * Assembles the lateral model of a line: Timoshenko beams along the developed length, hinges at universal and flexible
 * joints with the joint's mass, discs, supports.
 *
 * @remarks Small deflections of each shaft about its own axis, the same in both planes: the joint angles do not enter.
 *   A joint's own polar and diametral inertia is left out; a rigid support holds exactly, not by a large stiffness.
 */
export function buildWhirlModel(line: ShaftLine, options: WhirlModelOptions = {}): WhirlModel {
  const { frequency = expectedFrequency(line, 4), refine = 1 } = options;
  const mesh = lineMesh(line, { frequency, refine });
  const freedoms = lineFreedoms(line, mesh);
  const band = (): SymmetricBand => createBand(freedoms.count, HALF_BANDWIDTH);
  const model = { mesh, freedoms, stiffness: band(), mass: band(), gyroscopic: band(), frequency };
  addShafts(model);
  addDiscs(model, line);
  addSprings(model, line);
  addJoints(model, line);
  return model;
}

function addShafts({ mesh, freedoms, stiffness, mass, gyroscopic }: WhirlModel): void {
  mesh.sections.forEach((section, shaft) => {
    const end = mesh.firstNode[shaft + 1] ?? 0;
    let length = 0;
    let element: BeamElement | undefined;
    for (let node = mesh.firstNode[shaft] ?? 0; node + 1 < end; node++) {
      const own = (mesh.at[node + 1] ?? 0) - (mesh.at[node] ?? 0);
      if (!element || Math.abs(own - length) > SAME_LENGTH * own) element = beamElement(section, own);
      length = own;
      const rows = elementRows(freedoms, node);
      addBlock(stiffness, { rows, entries: element.stiffness });
      addBlock(mass, { rows, entries: element.mass });
      addBlock(gyroscopic, { rows, entries: element.gyroscopic });
    }
  });
}

function addDiscs({ mesh, freedoms, mass, gyroscopic }: WhirlModel, line: ShaftLine): void {
  line.shafts.forEach((_, shaft) => {
    for (const disc of wetDiscs(line, shaft)) {
      const { rows, shape } = locatePoint({ mesh, freedoms }, { shaft, at: disc.at });
      addBlock(mass, { rows, entries: outerSquare(shape.displacement, disc.mass) });
      addBlock(mass, { rows, entries: outerSquare(shape.slope, disc.diametralInertia) });
      addBlock(gyroscopic, { rows, entries: outerSquare(shape.slope, disc.polarInertia) });
    }
  });
}

function addSprings({ mesh, freedoms, stiffness }: WhirlModel, line: ShaftLine): void {
  line.shafts.forEach(({ supports }, shaft) => {
    for (const { at, radialStiffness = 0, angularStiffness = 0 } of supports) {
      if (radialStiffness === 0 && angularStiffness === 0) continue;
      const { rows, shape } = locatePoint({ mesh, freedoms }, { shaft, at });
      addBlock(stiffness, { rows, entries: outerSquare(shape.displacement, radialStiffness) });
      addBlock(stiffness, { rows, entries: outerSquare(shape.slope, angularStiffness) });
    }
  });
}

function addJoints({ mesh, freedoms, stiffness, mass }: WhirlModel, line: ShaftLine): void {
  line.joints.forEach((joint, index) => {
    const after = mesh.firstNode[index + 1] ?? 0;
    addBlock(mass, { rows: [freedoms.displacement[after] ?? -1], entries: [joint.mass] });
    const { kind, bendingStiffness: spring = 0 } = joint;
    if (kind !== 'flexible' || spring === 0) return;
    const rows = [freedoms.slope[after - 1] ?? -1, freedoms.slope[after] ?? -1];
    addBlock(stiffness, { rows, entries: [spring, -spring, -spring, spring] });
  });
}
