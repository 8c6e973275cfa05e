import fc from 'fast-check';
import { Matrix, SingularValueDecomposition } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { freeShafts, type HeldLine } from '../../../packages/core/src/line/free-shafts.js';

type Kind = HeldLine['joints'][number]['kind'];

const shaft = (...at: number[]) => ({ length: 1, supports: at.map((place) => ({ at: place })) });
const clamped = { length: 1, supports: [{ at: 0, fixesSlope: true }] };
const joints = (...kinds: Kind[]) => kinds.map((kind) => ({ kind }));
const hinge = 'universal' as const;

describe('freeShafts finds nothing free in', () => {
  it.each<[string, HeldLine]>([
    ['one shaft in two bushes', { shafts: [shaft(0.2, 0.8)], joints: [] }],
    ['one shaft in an elastic and a rigid one', { shafts: [{ length: 1, supports: [{ at: 0, radialStiffness: 1 }, { at: 1 }] }], joints: [] }], // prettier-ignore
    ['a clamped shaft', { shafts: [clamped], joints: [] }],
    ['a shaft between two held ones, without a support of its own', { shafts: [shaft(0.1, 0.5), shaft(), shaft(0.5, 0.9)], joints: joints(hinge, hinge) }], // prettier-ignore
    [
      'a stub carried by a hinge and one bearing',
      { shafts: [shaft(0.1), shaft(0.2, 0.8)], joints: joints(hinge) },
    ],
    [
      'two shafts with one bush each, rigidly joined',
      { shafts: [shaft(0.1), shaft(0.9)], joints: joints('rigid') },
    ],
    ['the same by a flexible joint with a bending stiffness', { shafts: [shaft(0.1), shaft(0.9)], joints: [{ kind: 'flexible', bendingStiffness: 1 }] }], // prettier-ignore
  ])('%s', (_, line) => {
    expect(freeShafts(line)).toEqual([]);
  });
});

describe('freeShafts names', () => {
  it.each<[string, HeldLine, ReturnType<typeof freeShafts>]>([
    ['a shaft with no support', { shafts: [shaft()], joints: [] }, [{ first: 0, last: 0, motion: 'move sideways and swing' }]],
    ['a shaft in one bush', { shafts: [shaft(0.25)], joints: [] }, [{ first: 0, last: 0, motion: 'swing about its support at 0.25 m' }]],
    ['a motor shaft without bearings', { shafts: [shaft(), shaft(0.2, 0.8)], joints: joints(hinge) }, [{ first: 0, last: 0, motion: 'swing about joints[0]' }]],
    ['a propeller shaft without bushes', { shafts: [shaft(0.2, 0.8), shaft()], joints: joints(hinge) }, [{ first: 1, last: 1, motion: 'swing about joints[0]' }]],
    ['a flexible joint without bending stiffness, as a hinge', { shafts: [shaft(0.1), shaft(0.9)], joints: joints('flexible') }, [{ first: 0, last: 1, motion: 'move sideways, bending at joints[0]' }]],
    ['a hinge between two hinges', { shafts: [shaft(0.2, 0.8), shaft(), shaft(), shaft(0.2, 0.8)], joints: joints(hinge, hinge, hinge) }, [{ first: 1, last: 2, motion: 'move sideways, bending at joints[0] and joints[1] and joints[2]' }]],
    ['a bush under a hinge, which leaves both shafts to swing', { shafts: [shaft(1), shaft()], joints: joints(hinge) }, [{ first: 0, last: 1, motion: 'move sideways, bending at joints[0]' }]],
    ['two parts apart', { shafts: [shaft(), shaft(0.2, 0.8), shaft()], joints: joints(hinge, hinge) }, [{ first: 0, last: 0, motion: 'swing about joints[0]' }, { first: 2, last: 2, motion: 'swing about joints[1]' }]],
    ['a rigid row without supports', { shafts: [shaft(), shaft()], joints: joints('rigid') }, [{ first: 0, last: 1, motion: 'move sideways' }]],
  ])('%s', (_, line, parts) => {
    expect(freeShafts(line)).toEqual(parts);
  }); // prettier-ignore
});

/*
 * The same statics written in other unknowns, displacement at the motor end and slope of each shaft, and judged by
 * singular values (ml-matrix): free motions are right singular vectors of a value that is 0.
 */
function movingBySingularValues({ shafts, joints: ties }: HeldLine): boolean[] {
  const size = 2 * shafts.length;
  const rows: number[][] = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  const row = (entries: [number, number][]): void => {
    const values = new Array<number>(size).fill(0);
    for (const [column, value] of entries) values[column] = value;
    rows.push(values);
  };
  shafts.forEach(({ supports }, i) => {
    for (const { at, fixesSlope } of supports) {
      row([[2 * i, 1], [2 * i + 1, at]]); // prettier-ignore
      if (fixesSlope) row([[2 * i + 1, 1]]);
    }
  });
  ties.forEach(({ kind }, i) => {
    row([[2 * i, 1], [2 * i + 1, shafts[i]!.length], [2 * i + 2, -1]]); // prettier-ignore
    if (kind === 'rigid') row([[2 * i + 1, 1], [2 * i + 3, -1]]); // prettier-ignore
  });
  const { diagonal, rightSingularVectors } = new SingularValueDecomposition(new Matrix(rows));
  const free = diagonal.flatMap((value, column) =>
    value < 1e-9 ? [rightSingularVectors.getColumn(column)] : [],
  );
  return shafts.map((_, i) => free.some((v) => Math.hypot(v[2 * i]!, v[2 * i + 1]!) > 1e-7));
}

describe('freeShafts agrees with singular values', () => {
  const place = fc.constantFrom(0, 0.25, 0.5, 1);
  const support = fc.record({ at: place, fixesSlope: fc.constantFrom(false, false, false, true) });
  const piece = fc
    .record({ length: fc.constantFrom(0.5, 1, 3), supports: fc.array(support, { maxLength: 2 }) })
    .map(({ length, supports }) => ({
      length,
      supports: supports.map((s) => ({ ...s, at: s.at * length })),
    }));

  it('on random lines of up to six shafts', () => {
    const kinds = fc.array(fc.constantFrom<Kind>('universal', 'universal', 'rigid', 'flexible'), {
      minLength: 5,
      maxLength: 5,
    });
    let held = 0;
    fc.assert(
      fc.property(fc.array(piece, { minLength: 1, maxLength: 6 }), kinds, (shafts, all) => {
        const line = { shafts, joints: joints(...all.slice(0, shafts.length - 1)) };
        const moving = shafts.map((_, i) =>
          freeShafts(line).some(({ first, last }) => i >= first && i <= last),
        );
        expect(moving).toEqual(movingBySingularValues(line));
        held += moving.includes(true) ? 0 : 1;
      }),
      { numRuns: 500, seed: 7 },
    );
    expect(held).toBeGreaterThan(50);
    expect(held).toBeLessThan(450);
  });
});
