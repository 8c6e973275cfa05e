import type { ShaftLine } from '../line/types.js';
import { addBlock } from '../numerics/add-block.js';
import { combineBands } from '../numerics/combine-bands.js';
import { factorComplexBand, type ComplexBandFactor } from '../numerics/complex-band.js';
import { createComplexVector, type ComplexVector } from '../numerics/complex-vector.js';
import { plus, times, type Complex } from '../numerics/complex.js';
import { lowestEigenpairs } from '../numerics/lowest-eigenpairs.js';
import { multiplyBand } from '../numerics/multiply-band.js';
import { solveComplexBand } from '../numerics/solve-complex-band.js';
import { solveComplex } from '../numerics/solve-complex.js';
import type { SymmetricBand } from '../numerics/types.js';
import { locatePoint } from './locate-point.js';
import { outerSquare } from './outer-square.js';
import type { WhirlModel } from './build-whirl-model.js';
import type { FactoredModel } from './whirl-solver.js';

/** Modes that are given their share of critical damping each; those above get less. */
const DAMPED_MODES = 8;
/** Frequency over the lowest beyond which a mode counts as above: the correction loses as many digits as this has. */
const REACH = 1e3;

export interface DampingRates {
  /** ζ */
  readonly modal: number;
  /** N·s/m */
  readonly bushes: number;
}

export interface Turning {
  /** rad/s of the shaft. */
  readonly speed: number;
  /** rad/s of the whirl. */
  readonly frequency: number;
  /** +1 forward, −1 backward. */
  readonly turn: number;
}

/** Replaces a work vector of loads by the steady whirl that they drive. */
export type SteadySolver = (turning: Turning) => (load: ComplexVector) => void;

interface DampedMode {
  /** M ψ with ψᵀ M ψ = 1. */
  readonly momentum: Float64Array;
  /** kg⁰ rad/s, 2ζ(ω_k − ω_m): what the mode has beyond the damping of all. */
  readonly rate: number;
}

/**
 * The damped line under loads that turn at ω: (K ± ωΩG − ω²M + iωC) q = f, in the sense of the whirl.
 *
 * C = 2ζω_m M + Σ 2ζ(ω_k − ω_m) (Mψ_k)(Mψ_k)ᵀ over the lowest m = 8 modes of the line at rest gives each of them ζ of its
 * critical damping, exactly, and those above ζω_m/ω. The first term keeps the band; the few others are a change of low
 * rank, by Woodbury's formula.
 *
 * @see W. T. Thomson, "Theory of Vibration with Applications", §6.8 (modal damping); Gene Golub and Charles Van Loan, "Matrix
 *   Computations", 4th ed., §2.1.4 (Woodbury)
 */
export function dampedSystem(line: ShaftLine, base: FactoredModel, rates: DampingRates): SteadySolver {
  const { model } = base;
  const { floor, modes } = dampedModes(base, rates.modal);
  const bushes = bushDamping(line, model, rates.bushes);
  return ({ speed, frequency, turn }) => {
    const real = combineBands(model.stiffness, model.mass, -(frequency ** 2));
    combineBands(real, model.gyroscopic, turn * frequency * speed, real.values);
    const imaginary = combineBands(bushes, model.mass, floor);
    for (let i = 0; i < imaginary.values.length; i++)
      imaginary.values[i] = frequency * (imaginary.values[i] ?? 0);
    const factor = factorComplexBand({ real, imaginary });
    return frequency > 0
      ? corrected(factor, modes, frequency)
      : (load) => {
          solveComplexBand(factor, load);
        };
  };
}

function dampedModes(
  { model, factor }: FactoredModel,
  damping: number,
): { readonly floor: number; readonly modes: readonly DampedMode[] } {
  const { values, vectors } = lowestEigenpairs(model.stiffness, {
    inertia: model.mass,
    count: Math.min(DAMPED_MODES, model.mass.size),
    factor,
  });
  const own = values.map(Math.sqrt).filter((frequency) => frequency <= REACH * Math.sqrt(values[0] ?? 0));
  const highest = own.at(-1) ?? 0;
  const modes = vectors.slice(0, own.length - 1).map((vector, k) => {
    const frequency = own[k] ?? 0;
    const momentum = new Float64Array(vector.length);
    multiplyBand(model.mass, vector, momentum);
    return {
      momentum: momentum.map((value) => value * frequency),
      rate: 2 * damping * (frequency - highest),
    };
  });
  return { floor: 2 * damping * highest, modes };
}

function bushDamping(line: ShaftLine, model: WhirlModel, rate: number): SymmetricBand {
  const band = combineBands(model.mass, model.mass, -1);
  line.shafts.forEach(({ supports }, shaft) => {
    for (const { at, radialStiffness } of supports) {
      if (radialStiffness === undefined) continue;
      const { rows, shape } = locatePoint(model, { shaft, at });
      addBlock(band, { rows, entries: outerSquare(shape.displacement, rate) });
    }
  });
  return band;
}

/** x = A⁻¹f − Z s with Z = A⁻¹U and (1 + D UᵀZ) s = D UᵀA⁻¹f, for A + U D Uᵀ. */
function corrected(
  factor: ComplexBandFactor,
  modes: readonly DampedMode[],
  frequency: number,
): (load: ComplexVector) => void {
  const responses = modes.map(({ momentum }) => {
    const own = createComplexVector(momentum.length);
    own.real.set(momentum);
    solveComplexBand(factor, own);
    return own;
  });
  const shares = (vector: ComplexVector): Complex[] =>
    modes.map(({ momentum, rate }) => times([0, frequency * rate], project(momentum, vector)));
  const columns = responses.map(shares);
  const rows = modes.map((_, i) =>
    columns.map((column, j): Complex => plus(column[i] ?? [0, 0], [i === j ? 1 : 0, 0])),
  );
  return (load) => {
    solveComplexBand(factor, load);
    solveComplex(rows, shares(load)).forEach((share, k) => {
      const own = responses[k];
      if (own) subtract(load, own, share);
    });
  };
}

function project(weights: Float64Array, { real, imaginary }: ComplexVector): Complex {
  let [re, im] = [0, 0];
  for (let i = 0; i < weights.length; i++) {
    re += (weights[i] ?? 0) * (real[i] ?? 0);
    im += (weights[i] ?? 0) * (imaginary[i] ?? 0);
  }
  return [re, im];
}

function subtract(from: ComplexVector, { real, imaginary }: ComplexVector, [re, im]: Complex): void {
  for (let i = 0; i < real.length; i++) {
    const [p, q] = [real[i] ?? 0, imaginary[i] ?? 0];
    from.real[i] = (from.real[i] ?? 0) - (p * re - q * im);
    from.imaginary[i] = (from.imaginary[i] ?? 0) - (p * im + q * re);
  }
}
