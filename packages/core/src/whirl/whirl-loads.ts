import type { ShaftLine } from '../line/types.js';
import { USUAL_BALANCE_GRADE } from '../line/usual-balance-grade.js';
import { createComplexVector, type ComplexVector } from '../numerics/complex-vector.js';
import { beamElement } from './beam-element.js';
import type { WhirlModel } from './build-whirl-model.js';
import { elementRows } from './element-rows.js';
import { jointCouples } from './joint-couples.js';
import { locatePoint } from './locate-point.js';
import type {
  BowExcitation,
  ForceExcitation,
  JointExcitation,
  UnbalanceExcitation,
  Whirl,
  WhirlExcitation,
} from './types.js';

/** Loads that turn together: `base` + Ω `graded` + Ω² `inertial`. */
export interface WhirlLoad {
  readonly order: number;
  readonly whirl: Whirl;
  readonly base: ComplexVector;
  readonly graded: ComplexVector;
  readonly inertial: ComplexVector;
}

/** The loads of some excitations over the unknowns of the model, those of one order and whirl added up. */
export function whirlLoads(
  line: ShaftLine,
  model: WhirlModel,
  excitations: readonly WhirlExcitation[],
): WhirlLoad[] {
  const loads: WhirlLoad[] = [];
  for (const excitation of excitations) {
    const { order, whirl } = turningOf(excitation);
    let own = loads.find((load) => load.order === order && load.whirl === whirl);
    if (!own) {
      const vector = (): ComplexVector => createComplexVector(model.mass.size);
      own = { order, whirl, base: vector(), graded: vector(), inertial: vector() };
      loads.push(own);
    }
    addLoad({ line, model, load: own }, excitation);
  }
  return loads;
}

function turningOf(excitation: WhirlExcitation): { readonly order: number; readonly whirl: Whirl } {
  switch (excitation.kind) {
    case 'unbalance':
    case 'bow':
      return { order: 1, whirl: 'forward' };
    case 'joints':
      return { order: 2, whirl: excitation.whirl ?? 'forward' };
    case 'force':
      return { order: excitation.order, whirl: excitation.whirl ?? 'forward' };
  }
}

interface Loading {
  readonly line: ShaftLine;
  readonly model: WhirlModel;
  readonly load: WhirlLoad;
}

function addLoad(loading: Loading, excitation: WhirlExcitation): void {
  switch (excitation.kind) {
    case 'unbalance':
      addUnbalance(loading, excitation);
      return;
    case 'bow':
      addBow(loading, excitation);
      return;
    case 'joints':
      addJoints(loading, excitation);
      return;
    case 'force':
      addForce(loading, excitation);
  }
}

/** u Ω² at each disc; where none is entered m G Ω, as a balance for that very speed would leave it. */
function addUnbalance({ line, model, load }: Loading, { phases = [] }: UnbalanceExcitation): void {
  let index = 0;
  line.shafts.forEach(({ discs }, shaft) => {
    for (const { at, mass, unbalance } of discs) {
      const { rows, shape } = locatePoint(model, { shaft, at });
      const phase = phases[index] ?? 0;
      index += 1;
      const [to, size] =
        unbalance === undefined
          ? [load.graded, (mass * USUAL_BALANCE_GRADE) / 1000]
          : [load.inertial, unbalance];
      addTo(to, rows, { weights: shape.displacement, size, phase });
    }
  });
}

/**
 * What it takes to straighten the shaft: K b of its elements, b the arc δ (1 − (2x/s)²) about mid-span. δ is half the
 * reading, s the span between the outermost supports of the shaft, or its length.
 */
function addBow({ line, model, load }: Loading, { phases = [] }: BowExcitation): void {
  const { mesh, freedoms } = model;
  line.shafts.forEach((own, shaft) => {
    const [from, to] = spanOf(own);
    const bow = (own.runout ?? 0) / 2;
    const section = mesh.sections[shaft];
    if (bow === 0 || !section) return;
    const arc = (at: number): [number, number] => {
      const share = (2 * at - from - to) / (to - from);
      return [bow * (1 - share ** 2), (-4 * bow * share) / (to - from)];
    };
    for (let node = mesh.firstNode[shaft] ?? 0; node + 1 < (mesh.firstNode[shaft + 1] ?? 0); node++) {
      const [start, end] = [mesh.at[node] ?? 0, mesh.at[node + 1] ?? 0];
      const { stiffness } = beamElement(section, end - start);
      const bent = [...arc(start), ...arc(end)];
      const weights = bent.map((_, i) =>
        bent.reduce((sum, x, j) => sum + (stiffness[4 * i + j] ?? 0) * x, 0),
      );
      addTo(load.base, elementRows(freedoms, node), { weights, size: 1, phase: phases[shaft] ?? 0 });
    }
  });
}

function spanOf({ length, supports }: ShaftLine['shafts'][number]): readonly [number, number] {
  const places = supports.map(({ at }) => at);
  const [from, to] = [Math.min(...places), Math.max(...places)];
  return to > from ? [from, to] : [0, length];
}

function addJoints({ line, model, load }: Loading, { torque, torqueSpeed }: JointExcitation): void {
  const { mesh, freedoms } = model;
  const [to, scale] = torqueSpeed === undefined ? [load.base, 1] : [load.inertial, 1 / torqueSpeed ** 2];
  for (const { joint, driving, driven, phase } of jointCouples(line)) {
    const after = mesh.firstNode[joint + 1] ?? 0;
    const size = torque * scale;
    addTo(to, [freedoms.slope[after - 1] ?? -1], { weights: [driving], size, phase });
    addTo(to, [freedoms.slope[after] ?? -1], { weights: [-driven], size, phase });
  }
}

function addForce({ model, load }: Loading, { shaft, at, force, phase = 0 }: ForceExcitation): void {
  const { rows, shape } = locatePoint(model, { shaft, at });
  addTo(load.base, rows, { weights: shape.displacement, size: force, phase });
}

interface Part {
  readonly weights: readonly number[];
  readonly size: number;
  readonly phase: number;
}

function addTo(
  { real, imaginary }: ComplexVector,
  rows: readonly number[],
  { weights, size, phase }: Part,
): void {
  rows.forEach((row, i) => {
    if (row < 0) return;
    real[row] = (real[row] ?? 0) + (weights[i] ?? 0) * size * Math.cos(phase);
    imaginary[row] = (imaginary[row] ?? 0) + (weights[i] ?? 0) * size * Math.sin(phase);
  });
}
