import fc from 'fast-check';
import { EigenvalueDecomposition, Matrix, solve } from 'ml-matrix';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { criticalSpeeds, speedFrequencyMap, type ShaftLine } from '@sternline/core';
import { combineBands } from '../../../packages/core/src/numerics/combine-bands.js';
import { factorBand } from '../../../packages/core/src/numerics/factor-band.js';
import { lowestQuadraticRoots } from '../../../packages/core/src/numerics/lowest-quadratic-roots.js';
import { buildWhirlModel } from '../../../packages/core/src/whirl/build-whirl-model.js';
import { dense } from '../../support/dense.js';
import { discOf, lineOf, shaftOf, uniformShaft, weightlessSteel, withoutShear } from '../../support/lines.js';
import { usualLine } from '../../support/random-lines.js';

interface MapCase {
  readonly line: ShaftLine;
  readonly rows: readonly { speed: number; forward: number[]; backward: number[] }[];
}

const file = new URL('../../reference/whirl/responses.json', import.meta.url);
const { maps } = JSON.parse(readFileSync(file, 'utf8')) as { maps: MapCase[] };

describe('speedFrequencyMap against an independent spectral model (tests/reference/whirl/responses.py)', () => {
  it.each(maps.map(({ line, rows }) => ({ name: line.name, line, rows })))('$name', ({ line, rows }) => {
    const map = speedFrequencyMap(line, { speeds: rows.map(({ speed }) => speed) });
    rows.forEach(({ forward, backward }, i) => {
      for (const mode of [0, 1, 2, 3]) {
        expect(Math.abs(map.forward[mode]![i]! / forward[mode]! - 1)).toBeLessThan(1e-4);
        expect(Math.abs(map.backward[mode]![i]! / backward[mode]! - 1)).toBeLessThan(1e-4);
      }
    });
  });
});

describe('speedFrequencyMap', () => {
  it('gives both whirls of a still thin disc at the end of a cantilever: √3 ∓ 1', () => {
    // ω / √(3EI/ml³) with μ = 3 Id/(ml²) = 1 and no spin: printed 0.74 and 2.73 at
    // https://archive.nptel.ac.in/content/storage2/courses/112103024/module5/lec3/4.html; exactly √3 ∓ 1
    const mass = 0.2;
    const length = 0.3;
    const diametralInertia = (mass * length ** 2) / 3;
    const line = lineOf([
      shaftOf({
        length,
        outerDiameter: 0.006,
        material: weightlessSteel,
        supports: [{ at: 0, fixesSlope: true }],
        discs: [discOf({ at: length, mass, diametralInertia, polarInertia: 2 * diametralInertia })],
      }),
    ]);
    const bending = weightlessSteel.youngsModulus * (Math.PI / 64) * 0.006 ** 4;
    const unit = Math.sqrt((3 * bending) / (mass * length ** 3));
    const { forward, backward } = speedFrequencyMap(withoutShear(line), { speeds: [0], modes: 2 });
    [Math.sqrt(3) - 1, Math.sqrt(3) + 1].forEach((root, mode) => {
      expect(Math.abs(forward[mode]![0]! / (root * unit) - 1)).toBeLessThan(1e-5);
      expect(Math.abs(backward[mode]![0]! / (root * unit) - 1)).toBeLessThan(1e-5);
    });
  });

  it('meets the order lines at the critical speeds', () => {
    fc.assert(
      fc.property(usualLine, fc.constantFrom(1, 2, 4), (line, order) => {
        for (const whirl of ['forward', 'backward'] as const) {
          criticalSpeeds(line, { order, whirl, count: 3 }).forEach(({ speed }, mode) => {
            const map = speedFrequencyMap(line, { speeds: [speed], modes: 3 });
            // both meshes keep within 1e-4
            expect(Math.abs(map[whirl][mode]![0]! / (order * speed) - 1)).toBeLessThan(1e-4);
          });
        }
      }),
      { numRuns: 40, seed: 1 },
    );
  });

  it('does not hang on the speeds beside one: each set of roots is counted', () => {
    fc.assert(
      fc.property(usualLine, fc.double({ min: 0, max: 5000, noNaN: true }), (line, speed) => {
        const alone = speedFrequencyMap(line, { speeds: [speed] });
        const among = speedFrequencyMap(line, { speeds: [speed, 0, speed / 3, speed / 2] });
        for (const whirl of ['forward', 'backward'] as const) {
          among[whirl].forEach((row, mode) => {
            expect(Math.abs(row[0]! / alone[whirl][mode]![0]! - 1)).toBeLessThan(1e-9);
          });
        }
      }),
      { numRuns: 40, seed: 2 },
    );
  });

  it('forward rises and backward falls with speed, from one value at rest', () => {
    fc.assert(
      fc.property(usualLine, (line) => {
        const { forward, backward } = speedFrequencyMap(line, { speeds: [0, 500, 2000] });
        forward.forEach((row, mode) => {
          expect(Math.abs(row[0]! / backward[mode]![0]! - 1)).toBeLessThan(1e-10);
          expect(row[1]! >= row[0]! * (1 - 1e-10) && row[2]! >= row[1]! * (1 - 1e-10)).toBe(true);
          const back = backward[mode]!;
          expect(back[1]! <= back[0]! * (1 + 1e-10) && back[2]! <= back[1]! * (1 + 1e-10)).toBe(true);
        });
      }),
      { numRuns: 40, seed: 3 },
    );
  });

  it.each([
    [{ speeds: [] }, 'speedFrequencyMap: speeds must be one speed or more, got a list of 0'],
    [{ speeds: [1, -1] }, 'speedFrequencyMap: speeds[1] must be a finite number of at least 0, got -1'],
    [{ speeds: [1], modes: 0 }, 'speedFrequencyMap: modes must be a whole number from 1 to 100, got 0'],
  ])('refuses %o', (options, message) => {
    expect(() => speedFrequencyMap(uniformShaft(['pinned', 'pinned']), options)).toThrow(
      new RangeError(message),
    );
  });
});

describe('lowestQuadraticRoots', () => {
  it.each([
    [1, 700],
    [1, 3000],
    [-1, 700],
    [-1, 3000],
  ])('gives ml-matrix the roots of the same matrices, %i Ω at %i rad/s', (turn, speed) => {
    const line = uniformShaft(['pinned', 'free'], {
      length: 0.3,
      outerDiameter: 0.008,
      supports: [{ at: 0.22 }],
      discs: [discOf({ at: 0.3, mass: 0.15, diametralInertia: 6e-5, polarInertia: 1.2e-4 })],
    });
    const { stiffness, mass, gyroscopic } = buildWhirlModel(line, { frequency: 3000 });
    const zero = combineBands(gyroscopic, gyroscopic, -1);
    const coupling = combineBands(zero, gyroscopic, turn * speed);
    const { values } = lowestQuadraticRoots(
      { stiffness, factor: factorBand(stiffness), coupling, mass },
      { count: 3 },
    );
    // μ = 1/ω of (μ² K + μ C − M) x = 0, by its companion matrix
    const size = stiffness.size;
    const companion = Matrix.zeros(2 * size, 2 * size);
    companion.setSubMatrix(Matrix.eye(size), 0, size);
    companion.setSubMatrix(solve(dense(stiffness), dense(mass)), size, 0);
    companion.setSubMatrix(solve(dense(stiffness), dense(coupling)).mul(-1), size, size);
    const { realEigenvalues } = new EigenvalueDecomposition(companion);
    const expected = realEigenvalues.sort((a, b) => b - a).map((mu) => 1 / mu);
    values.forEach((value, i) => {
      expect(Math.abs(value / expected[i]! - 1)).toBeLessThan(1e-8);
    });
  });
});
