import type { ShaftLine } from '../line/types.js';
import { combineBands } from '../numerics/combine-bands.js';
import { factorBand } from '../numerics/factor-band.js';
import { interpolateVectors, type VectorSample } from '../numerics/interpolate-vectors.js';
import { lowestEigenpairs } from '../numerics/lowest-eigenpairs.js';
import { NotPositiveDefiniteError } from '../numerics/not-positive-definite-error.js';
import type { BandFactor, Eigenpairs, SymmetricBand } from '../numerics/types.js';
import { buildWhirlModel, type WhirlModel } from './build-whirl-model.js';
import { expectedFrequency } from './expected-frequency.js';
import { MechanismError } from './mechanism-error.js';
import type { Whirl } from './types.js';

/** The mesh carries this many modes even where fewer are asked for, so that an answer does not hang on the count. */
const LEAST_MODES = 4;

export interface WhirlSolverOptions {
  /** Modes solved even where fewer are asked for: with the usual 4 a mesh too coarse for the fourth is made anew. */
  readonly leastModes?: number;
  /** Modes of a line not far from this one, to begin from; passed over where the meshes differ in size. */
  readonly start?: readonly Float64Array[];
}
/** A finer mesh carries this many times the frequency; a fixed step lets several excitations share it. */
const FINER = 2;
const MOST_MESHES = 8;

/** A model with what its solutions share. */
export interface FactoredModel {
  readonly model: WhirlModel;
  /** Of the stiffness. */
  readonly factor: BandFactor;
}

export interface WhirlPencil {
  readonly order: number;
  readonly whirl: Whirl;
  readonly count: number;
}

export interface SolvedWhirl extends FactoredModel {
  /** M ∓ G/n of the excitation. */
  readonly inertia: SymmetricBand;
  /** ω² in rad²/s², ascending, at least four where there are as many; vectors with φᵀ K φ = 1. */
  readonly pairs: Eigenpairs;
}

export interface WhirlSolver {
  /** The whirl modes that one excitation meets. */
  readonly solve: (pencil: WhirlPencil) => SolvedWhirl;
  /** A model whose mesh carries this frequency, in rad/s, and about as many modes. */
  readonly modelFor: (frequency: number, modes: number) => FactoredModel;
}

/**
 * Solves a line for several excitations with one mesh, one assembly and one factor of the stiffness wherever they do for
 * all, each excitation beginning from what the modes of those before lead to expect.
 *
 * @param caller - the public function, for its refusals
 */
export function whirlSolver(
  line: ShaftLine,
  caller: string,
  { leastModes = LEAST_MODES, start = [] }: WhirlSolverOptions = {},
): WhirlSolver {
  const models = new Map<number, FactoredModel>();
  const solved = new Map<string, VectorSample[]>();
  const modelAt = (frequency: number): FactoredModel => {
    const known = models.get(frequency) ?? factored(line, frequency, caller);
    models.set(frequency, known);
    return known;
  };
  const solve = ({ order, whirl, count }: WhirlPencil): SolvedWhirl => {
    const wanted = Math.max(leastModes, count);
    let frequency = expectedFrequency(line, Math.max(LEAST_MODES, count));
    for (let meshes = 1; ; meshes++) {
      const { model, factor } = modelAt(frequency);
      const turning = (whirl === 'forward' ? -1 : 1) / order;
      const inertia = combineBands(model.mass, model.gyroscopic, turning);
      const place = `${frequency} ${wanted}`;
      const before = solved.get(place) ?? [];
      const fresh = start[0]?.length === model.freedoms.count ? start : [];
      const guess = before.length > 0 ? interpolateVectors(before, turning) : fresh;
      const pairs = lowestEigenpairs(model.stiffness, { inertia, count: wanted, factor, guess });
      solved.set(place, withSample(before, { at: turning, vectors: pairs.vectors }));
      const highest = Math.sqrt(pairs.values.at(-1) ?? 0);
      if (highest <= frequency || meshes === MOST_MESHES) return { model, factor, inertia, pairs };
      frequency = carrying(highest, frequency);
    }
  };
  const modelFor = (frequency: number, modes: number): FactoredModel =>
    modelAt(carrying(frequency, expectedFrequency(line, Math.max(LEAST_MODES, modes))));
  return { solve, modelFor };
}

/** Samples at different values with alike many vectors: what interpolation asks for. */
function withSample(samples: readonly VectorSample[], own: VectorSample): VectorSample[] {
  const like = samples.filter(({ at, vectors }) => at !== own.at && vectors.length === own.vectors.length);
  return [...like, own];
}

/** The first of start, 2 start, 4 start … that is at least as high. */
function carrying(frequency: number, start: number): number {
  if (frequency <= start) return start;
  return start * FINER ** Math.ceil(Math.log(frequency / start) / Math.log(FINER));
}

function factored(line: ShaftLine, frequency: number, caller: string): FactoredModel {
  const model = buildWhirlModel(line, { frequency });
  try {
    return { model, factor: factorBand(model.stiffness) };
  } catch (error) {
    if (!(error instanceof NotPositiveDefiniteError)) throw error;
    throw mechanism(line, { model, row: error.row, caller });
  }
}

interface Failure {
  readonly model: WhirlModel;
  readonly row: number;
  readonly caller: string;
}

function mechanism(line: ShaftLine, { model: { mesh, freedoms }, row, caller }: Failure): MechanismError {
  const node = Math.max(freedoms.displacement.indexOf(row), freedoms.slope.indexOf(row));
  const shaft = mesh.shaft[node] ?? 0;
  return new MechanismError(`${caller}: line`, { shaft, name: line.shafts[shaft]?.name ?? '' });
}
