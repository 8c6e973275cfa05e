import { assess, exampleLine } from '@sternline/core';
import { describe, expect, it } from 'vitest';
import { compareLayouts } from '../../../packages/demo/src/model/compare-layouts.js';
import { rethickenShaft } from '../../../packages/demo/src/model/edit-line.js';

const five = exampleLine();
const six = { ...rethickenShaft(five, { shaft: 1, outerDiameter: 0.006 }), name: 'six' };
const speed = 300;

describe('compareLayouts', () => {
  const entries = [
    { id: 'a', line: five },
    { id: 'b', line: six },
  ];

  it('shows what assess says of each', () => {
    const { comparison } = compareLayouts(entries, speed);
    expect(comparison?.lines.map(({ assessment }) => assessment)).toEqual([
      assess(five, { speed }),
      assess(six, { speed }),
    ]);
  });

  it('leaves out one that cannot be computed, and says which', () => {
    const loose = {
      ...five,
      name: 'loose',
      shafts: five.shafts.map((shaft) => ({ ...shaft, supports: [] })),
    };
    const found = compareLayouts([...entries, { id: 'c', line: loose }], speed);
    expect(found.left).toEqual(['loose']);
    expect(found.entries).toEqual(entries);
  });

  it('compares nothing where fewer than two are left', () => {
    expect(compareLayouts(entries.slice(0, 1), speed)).not.toHaveProperty('comparison');
  });
});
