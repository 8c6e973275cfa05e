import fc from 'fast-check';
import { EigenvalueDecomposition, Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import type { ShaftLine } from '@sternline/core';
import { combineBands } from '../../../packages/core/src/numerics/combine-bands.js';
import { countBelow } from '../../../packages/core/src/numerics/count-below.js';
import { lowestEigenpairs } from '../../../packages/core/src/numerics/lowest-eigenpairs.js';
import { beamElement } from '../../../packages/core/src/whirl/beam-element.js';
import { buildWhirlModel } from '../../../packages/core/src/whirl/build-whirl-model.js';
import { elementShape } from '../../../packages/core/src/whirl/element-shape.js';
import { section } from '../../../packages/core/src/whirl/section.js';
import { shearCoefficient } from '../../../packages/core/src/whirl/shear-coefficient.js';
import { wetDiscs } from '../../../packages/core/src/whirl/wet-discs.js';
import { dense } from '../../support/dense.js';
import { discOf, jointOf, lineOf, shaftOf, steel, uniformShaft } from '../../support/lines.js';
import { extremeLine, usualLine } from '../../support/random-lines.js';

/** Gauss points and weights on 0 … 1, exact to degree 9 (Abramowitz and Stegun, table 25.4). */
const GAUSS: readonly (readonly [number, number])[] = [
  [0, 0.5688888888888889],
  [0.5384693101056831, 0.47862867049936647],
  [-0.5384693101056831, 0.47862867049936647],
  [0.906179845938664, 0.23692688505618908],
  [-0.906179845938664, 0.23692688505618908],
].map(([x, w]) => [(1 + x!) / 2, w! / 2] as const);

describe('beamElement', () => {
  it.each([0.3, 0.05, 0.004])('of %f m has the matrices of its shape functions by quadrature', (length) => {
    const own = section(shaftOf({ outerDiameter: 0.02, innerDiameter: 0.012 }));
    const element = beamElement(own, length);
    const sums = { stiffness: Matrix.zeros(4, 4), mass: Matrix.zeros(4, 4), gyroscopic: Matrix.zeros(4, 4) };
    const add = (to: Matrix, weights: readonly number[], factor: number): void => {
      const column = Matrix.columnVector(weights);
      to.add(column.mmul(column.transpose()).mul(factor));
    };
    for (const [fraction, weight] of GAUSS) {
      const { displacement, slope } = elementShape(own, { length, fraction });
      // the functions are cubic and quadratic: these differences are exact
      const step = 0.25;
      const [before, after] = [-step, step].map((d) => elementShape(own, { length, fraction: fraction + d }));
      const further = [-2 * step, 2 * step].map(
        (d) => elementShape(own, { length, fraction: fraction + d }).displacement,
      );
      const curvature = slope.map((_, k) => (after!.slope[k]! - before!.slope[k]!) / (2 * step * length));
      const shear = slope.map((own4, k) => {
        const near = after!.displacement[k]! - before!.displacement[k]!;
        const far = further[1]![k]! - further[0]![k]!;
        return (8 * near - far) / (12 * step * length) - own4;
      });
      add(sums.stiffness, curvature, weight * length * own.bendingStiffness);
      add(sums.stiffness, shear, weight * length * own.shearStiffness);
      add(sums.mass, displacement, weight * length * own.massPerLength);
      add(sums.mass, slope, weight * length * own.inertiaPerLength);
      add(sums.gyroscopic, slope, weight * length * 2 * own.inertiaPerLength);
    }
    for (const kind of ['stiffness', 'mass', 'gyroscopic'] as const) {
      const largest = sums[kind].max();
      sums[kind].to1DArray().forEach((entry, i) => {
        expect(Math.abs(element[kind][i]! - entry), `${kind} ${i}`).toBeLessThan(1e-10 * largest);
      });
    }
  });

  it('moves as one piece without force, and weighs what the shaft weighs', () => {
    const own = section(shaftOf({ outerDiameter: 0.02 }));
    const { stiffness, mass } = beamElement(own, 0.1);
    const row = (entries: readonly number[], i: number, motion: readonly number[]): number =>
      motion.reduce((sum, x, j) => sum + entries[4 * i + j]! * x, 0);
    for (const motion of [
      [1, 0, 1, 0],
      [0, 1, 0.1, 1],
    ]) {
      for (let i = 0; i < 4; i++)
        expect(Math.abs(row(stiffness, i, motion))).toBeLessThan(1e-9 * stiffness[0]!);
    }
    const weight = row(mass, 0, [1, 0, 1, 0]) + row(mass, 2, [1, 0, 1, 0]);
    expect(weight).toBeCloseTo(own.massPerLength * 0.1, 12);
  });
});

describe('shearCoefficient', () => {
  it('of a solid shaft, ν 0.3: 0.8863; of a thin tube: 0.5306', () => {
    // Cowper 1966: 6(1+ν)/(7+6ν) and 2(1+ν)/(4+3ν)
    expect(shearCoefficient(2.6, 0)).toBeCloseTo(7.8 / 8.8, 12);
    expect(shearCoefficient(2.6, 1)).toBeCloseTo(2.6 / 4.9, 12);
  });
});

describe('wetDiscs', () => {
  const propeller = { blades: 4, diameter: 0.05, pitch: 0.05 };
  const discs = [
    discOf({ name: 'Brass propeller', at: 0.9, mass: 1, polarInertia: 2, diametralInertia: 1 }),
    discOf({ name: 'nut', at: 1, mass: 1, polarInertia: 2, diametralInertia: 1 }),
  ];
  const lineWith = (own: typeof discs, more: Partial<ShaftLine>): ShaftLine => ({
    ...lineOf([shaftOf({ discs: own }), shaftOf({ discs: own })]),
    ...more,
  });
  const masses = (line: ShaftLine, shaft = 1): number[] => wetDiscs(line, shaft).map((disc) => disc.mass);

  it('adds a quarter to the propeller by name, on the last shaft only', () => {
    expect(masses(lineWith(discs, { propeller }))).toEqual([1.25, 1]);
    expect(masses(lineWith(discs, { propeller }), 0)).toEqual([1, 1]);
    expect(masses(lineWith(discs, {}))).toEqual([1, 1]);
  });

  it('takes the aftmost disc where none is named, and the factors of the line', () => {
    const unnamed = discs.map((disc) => ({ ...disc, name: 'disc' }));
    const wet = wetDiscs(
      lineWith(unnamed, { propeller: { ...propeller, wetMassFactor: 1.5, wetInertiaFactor: 1.1 } }),
      1,
    );
    expect(
      wet.map(({ mass, polarInertia, diametralInertia }) => [mass, polarInertia, diametralInertia]),
    ).toEqual([
      [1, 2, 1],
      [1.5, 2.2, 1.1],
    ]);
  });
});

describe('buildWhirlModel', () => {
  const pencil = (line: ShaftLine, factor: number, refine = 1) => {
    const { stiffness, mass, gyroscopic } = buildWhirlModel(line, { refine });
    return { stiffness, inertia: combineBands(mass, gyroscopic, factor) };
  };

  it.each([-1, -0.25, 0, 1])('gives ml-matrix the same eigenvalues, G times %f', (factor) => {
    const line = lineOf(
      [
        shaftOf({ length: 0.05, supports: [{ at: 0.01 }, { at: 0.04 }] }),
        shaftOf({ length: 0.1, outerDiameter: 0.006 }),
        shaftOf({
          length: 0.3,
          supports: [
            { at: 0.02, radialStiffness: 1e6 },
            { at: 0.27, fixesSlope: true },
          ],
          discs: [discOf({ at: 0.3, diametralInertia: 5e-6, polarInertia: 1e-5 })],
        }),
      ],
      [jointOf({ mass: 0.01 }), jointOf({ kind: 'flexible', bendingStiffness: 5, mass: 0.01 })],
    );
    const { stiffness, inertia } = pencil(line, factor);
    const { values } = lowestEigenpairs(stiffness, { inertia, count: 6 });
    const { realEigenvalues } = new EigenvalueDecomposition(solve(dense(stiffness), dense(inertia)));
    const expected = realEigenvalues
      .filter((mu) => mu > 0)
      .map((mu) => 1 / mu)
      .sort((a, b) => a - b);
    values.forEach((value, i) => {
      expect(Math.abs(value / expected[i]! - 1)).toBeLessThan(1e-8);
    });
  });

  /** Beam theory has nothing to say on a line five times as long as thick. */
  const isLine = ({ shafts }: ShaftLine): boolean =>
    Math.max(...shafts.map((shaft) => shaft.outerDiameter)) <
    0.2 * shafts.reduce((sum, shaft) => sum + shaft.length, 0);
  const anyLine = fc.oneof(usualLine, extremeLine).filter(isLine);

  it('counts by inertia what it finds', () => {
    fc.assert(
      fc.property(anyLine, fc.constantFrom(-1, -0.5, -0.25, 0, 0.5, 1), (line, factor) => {
        const { stiffness, inertia } = pencil(line, factor);
        const { values } = lowestEigenpairs(stiffness, { inertia, count: 5 });
        values.forEach((value, i) => {
          const gap = 1e-4;
          const below = Array.from(values).filter((other) => other < value * (1 - gap)).length;
          expect(countBelow(stiffness, { inertia, shift: value * (1 - gap) })).toBe(below);
          expect(countBelow(stiffness, { inertia, shift: value * (1 + gap) })).toBeGreaterThan(i);
        });
      }),
      { numRuns: 200, seed: 1 },
    );
  });

  it('changes its first four speeds by less than 0.01 % when every element is halved', () => {
    fc.assert(
      fc.property(anyLine, fc.constantFrom(-1, -0.25, 1), (line, factor) => {
        // the mesh that carries the fourth mode, as criticalSpeeds settles it
        const solveAt = (frequency: number, refine: number): Float64Array => {
          const { stiffness, mass, gyroscopic } = buildWhirlModel(line, { frequency, refine });
          return lowestEigenpairs(stiffness, {
            inertia: combineBands(mass, gyroscopic, factor),
            count: 4,
          }).values.map(Math.sqrt);
        };
        let frequency = solveAt(buildWhirlModel(line).frequency, 1).at(-1)!;
        frequency = Math.max(frequency, solveAt(frequency, 1).at(-1)!);
        const coarse = solveAt(frequency, 1);
        const fine = solveAt(frequency, 2);
        coarse.forEach((speed, i) => {
          expect(Math.abs(speed / fine[i]! - 1)).toBeLessThan(1e-4);
        });
      }),
      { numRuns: 150, seed: 2 },
    );
  });

  it('holds a rigid support exactly: the limit of a stiff one', () => {
    const line = (radialStiffness?: number): ShaftLine =>
      uniformShaft(['pinned', 'pinned'], {
        supports: [{ at: 0.4, ...(radialStiffness === undefined ? {} : { radialStiffness }) }],
      });
    const first = (one: ShaftLine): number => {
      const { stiffness, inertia } = pencil(one, 0);
      return lowestEigenpairs(stiffness, { inertia, count: 1 }).values[0]!;
    };
    const rigid = first(line());
    // the shaft itself has about 200 N/m there; the eigenvalue falls short by their ratio
    expect(first(line(1e7)) / rigid).toBeLessThan(1);
    expect(first(line(1e7)) / rigid).toBeGreaterThan(1 - 1e-3);
  });

  it('is blind to the angles of its joints', () => {
    const shafts = [shaftOf({ supports: [{ at: 0 }, { at: 0.5 }] }), shaftOf({ supports: [{ at: 0.5 }] })];
    const bent = shafts.map((shaft, i) => ({ ...shaft, elevation: 0.2 * i, plan: -0.1 * i }));
    expect(buildWhirlModel(lineOf(bent)).stiffness).toEqual(buildWhirlModel(lineOf(shafts)).stiffness);
  });

  it('carries a disc close to a bush without a node of its own', () => {
    const near = (gap: number): number[] => {
      const line = uniformShaft(['pinned', 'free'], {
        supports: [{ at: 0.8 }],
        discs: [discOf({ at: 0.8 + gap, mass: 1 })],
      });
      const { stiffness, inertia } = pencil(line, 0);
      return Array.from(lowestEigenpairs(stiffness, { inertia, count: 3 }).values);
    };
    expect(near(0.0009).length).toBe(3);
    const [inside, node] = [near(0.00099), near(0.00101)];
    inside.forEach((value, i) => {
      expect(Math.abs(value / node[i]! - 1)).toBeLessThan(1e-4);
    });
  });

  it('uses the wet propeller', () => {
    const line = uniformShaft(['pinned', 'pinned'], {
      material: steel,
      discs: [discOf({ at: 0.5, mass: 2 })],
    });
    const dry = buildWhirlModel(line).mass;
    const wet = buildWhirlModel({ ...line, propeller: { blades: 3, diameter: 0.05, pitch: 0.05 } }).mass;
    const added = combineBands(wet, dry, -1).values;
    expect(added.reduce((sum, value) => sum + value, 0)).toBeCloseTo(0.5, 12);
  });
});
