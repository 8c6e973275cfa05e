import { equivalentJoint, jointAngles, speedFluctuation, yokePhase, type ShaftLine } from '@sternline/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DEGREE, lineOf, towards, type Turn } from '../line/line-of.js';
import { single, turning } from './turning.js';

/** The line with its yokes put where the advice says. */
function turned(line: ShaftLine): ShaftLine {
  const twists = new Map(yokePhase(line).shafts.map(({ shaft, best }) => [shaft, best]));
  return {
    ...line,
    shafts: line.shafts.map((shaft, i) => ({ ...shaft, yokeTwist: twists.get(i) ?? shaft.yokeTwist })),
  };
}

const z = (angle: number, twist = 0) =>
  lineOf([{}, { elevation: angle * DEGREE, yokeTwist: twist * DEGREE }, {}]);

describe('yokePhase of two joints', () => {
  // Layouts in space: angle between the bend planes and second order with the yokes turned by it; a simulation with
  // vectors, derived.
  it.each([
    ['A', towards(1, 0.05, 0.1), towards(1, 0.15, 0.02), -102.02205, 9.32853e-4, 6.990015e-3],
    ['B', towards(1, 0.1, 0), towards(1, 0.1, 0.1), 90, 2.45086e-5, 4.950616e-3],
  ])('agrees with layout %s in space', (_, middle, last, planes, best, inLine) => {
    const line = lineOf([{}, middle, last]);
    const got = yokePhase(line);
    expect(Math.abs(got.shafts[0]!.planeAngle / DEGREE - planes)).toBeLessThan(6e-6);
    // Half a turn of a yoke changes nothing.
    expect(Math.abs(Math.sin(got.shafts[0]!.best - planes * DEGREE))).toBeLessThan(1e-6);
    const amplitude = (degree: number) => (2 * Math.asinh(degree / 2)) / 4;
    // degree = 1/c − c and k = (1 − c)/(1 + c) = tanh(½ asinh(degree/2)); derived.
    expect(Math.abs(Math.tanh(amplitude(got.degreeAtBest)) / best - 1)).toBeLessThan(1e-4);
    expect(Math.abs(Math.tanh(amplitude(got.degreeAtZero)) / inLine - 1)).toBeLessThan(1e-4);
  });

  // At equal angles a phase error ψ leaves the second order 2 k sin ψ: 20° and 5°, 10° and 5°, exact 5.42472e-3 and
  // 1.33430e-3 rad; derived, checked with vectors. 10°, ψ 90°: 0.0612449 from cos βₑ = cos²β.
  it('tells what an error costs', () => {
    expect(Math.abs(yokePhase(z(10, 90)).degree - 0.0612449)).toBeLessThan(6e-8);
    const off = yokePhase(z(20, 5));
    const k = 5.42472e-3;
    expect(Math.abs(off.degree / ((4 * k) / (1 - k ** 2)) - 1)).toBeLessThan(2e-6);
    const oneDegree = 2 * Math.tan(10 * DEGREE) ** 2 * Math.sin(1 * DEGREE);
    expect(Math.abs(off.shafts[0]!.degreeOneDegreeOff / (4 * oneDegree) - 1)).toBeLessThan(2e-3);
    expect(off.degreeAtZero).toBeLessThan(1e-12);
    expect(off.degreeAtBest).toBeLessThan(1e-12);
  });

  it('says which way to turn: a yoke turned from port up has to go back clockwise, seen looking aft', () => {
    const over = yokePhase(z(10, 7)).shafts[0]!;
    expect(Math.abs(over.turn / DEGREE + 7)).toBeLessThan(1e-9);
    expect(over.sense).toBe('clockwise');
    const under = yokePhase(z(10, -7)).shafts[0]!;
    expect(Math.abs(under.turn / DEGREE - 7)).toBeLessThan(1e-9);
    expect(under.sense).toBe('anticlockwise');
    expect(yokePhase(z(10)).shafts[0]!.sense).toBe('none');
  });

  it('finds the nearest tooth, over half a turn where the teeth are odd', () => {
    // 16 teeth, 22.5° apart: 50° is undone by two of them with 5° left over.
    const even = yokePhase(z(10, 50), { teeth: 16 }).shafts[0]!.spline!;
    expect(even.teeth).toBe(-2);
    expect(Math.abs(even.yokeTwist / DEGREE - 5)).toBeLessThan(1e-9);
    expect(Math.abs(even.degree - speedFluctuation(z(10, 5)).degree)).toBeLessThan(1e-14);
    expect(Math.abs(even.degreeOneToothOff - speedFluctuation(z(10, 27.5)).degree)).toBeLessThan(1e-14);
    // 15 teeth, 24° apart: 60° to undo; 5 teeth the other way make 120°, which is 180° in all: exact.
    const odd = yokePhase(z(10, 60), { teeth: 15 }).shafts[0]!.spline!;
    expect(odd.teeth).toBe(5);
    expect(odd.degree).toBeLessThan(1e-12);
    expect(yokePhase(z(10)).shafts[0]!.spline).toBeUndefined();
  });
});

describe('yokePhase of any chain', () => {
  // Best of many searches with pins followed in space, Nelder-Mead: turning.py. The search is exact to about 1e-8.
  it.each(turning.phases.map((phase, i) => [i, phase] as const))(
    'turns line %i as evenly as a search finds',
    (_, { shafts, degreeAtBest }) => {
      const line = lineOf(shafts);
      const got = yokePhase(line);
      expect(got.degreeAtBest).toBeLessThan(degreeAtBest + 1e-7);
      expect(got.degreeAtBest).toBeGreaterThan(degreeAtBest - 1e-6);
      expect(Math.abs(speedFluctuation(turned(line)).degree - got.degreeAtBest)).toBeLessThan(1e-12);
    },
  );

  const turns = fc.record({
    elevation: fc.double({ min: -0.5, max: 0.5, noNaN: true }),
    plan: fc.double({ min: -0.5, max: 0.5, noNaN: true }),
    yokeTwist: fc.double({ min: -3, max: 3, noNaN: true }),
  });
  const chains = (least: number, most: number): fc.Arbitrary<Turn[]> =>
    fc.array(turns, { minLength: least + 1, maxLength: most + 1 });

  // Steps −ln cos βᵢ in the hyperbolic plane close to a polygon unless one exceeds the sum of the others; derived.
  it('leaves what the largest joint has over the others together, and nothing else', () => {
    fc.assert(
      fc.property(chains(2, 8), (shafts) => {
        const line = lineOf(shafts);
        const steps = jointAngles(line).map((angle) => -Math.log(Math.cos(angle)));
        const excess = Math.max(0, 2 * Math.max(...steps) - steps.reduce((sum, step) => sum + step, 0));
        const got = yokePhase(line);
        expect(Math.abs(equivalentJoint(turned(line)).cosine - Math.exp(-excess))).toBeLessThan(1e-9);
        expect(got.degreeAtBest).toBeLessThan(got.degree + 1e-9);
        expect(got.degreeAtBest).toBeLessThan(got.degreeAtZero + 1e-9);
      }),
    );
  });

  it('has nothing more to turn once its advice is taken', () => {
    fc.assert(
      fc.property(chains(2, 3), (shafts) => {
        const again = yokePhase(turned(lineOf(shafts)));
        expect(Math.abs(again.degree - again.degreeAtBest)).toBeLessThan(1e-9);
      }),
    );
  });

  it('cancels joints close to 90° and next to nothing', () => {
    for (const angle of [1e-5, 1e-3, 1.5, 1.5707]) {
      const line = lineOf([
        {},
        { plan: angle, yokeTwist: 0.4 },
        { yokeTwist: -0.9 },
        { plan: angle, yokeTwist: 1.1 },
        {},
      ]);
      const { degree, degreeAtBest } = yokePhase(line);
      // What is left is the rounding of the steps, which joints close to 90° magnify.
      expect(degreeAtBest / degree).toBeLessThan(1e-5);
    }
  });

  it('takes rigid pieces between two joints for one shaft', () => {
    const line = lineOf(
      [{}, { elevation: 0.2, yokeTwist: 0.3 }, { elevation: 0.2, yokeTwist: 0.4 }, {}],
      ['universal', 'rigid', 'universal'],
    );
    const { shafts, degreeAtBest } = yokePhase(line);
    expect(shafts).toHaveLength(1);
    expect(shafts[0]!.shaft).toBe(1);
    expect(Math.abs(shafts[0]!.turn + 0.7)).toBeLessThan(1e-12);
    expect(Math.abs(Math.sin(shafts[0]!.planeAngle))).toBeLessThan(1e-12);
    expect(degreeAtBest).toBeLessThan(1e-12);
  });

  it('has no inner shaft where fewer than two joints are', () => {
    for (const line of [lineOf([{}]), single(10)]) {
      const got = yokePhase(line);
      expect(got.shafts).toEqual([]);
      expect(got.degreeAtBest).toBe(got.degree);
    }
  });

  it('refuses a spline that is none', () => {
    expect(() => yokePhase(z(10), { teeth: 1 })).toThrow(
      new RangeError('yokePhase: teeth must be a whole number from 2 to 1000, got 1'),
    );
    expect(() => yokePhase(z(10), { teeth: 15.5 })).toThrow(
      new RangeError('yokePhase: teeth must be a whole number from 2 to 1000, got 15.5'),
    );
  });
});
