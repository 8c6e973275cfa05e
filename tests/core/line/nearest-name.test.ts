import { describe, expect, it } from 'vitest';
import { nearestName } from '../../../packages/core/src/line/nearest-name.js';

const known = ['name', 'length', 'outerDiameter', 'innerDiameter', 'elevation', 'plan'];

describe('nearestName', () => {
  it.each([
    ['lenght', 'length'],
    ['outerdiameter', 'outerDiameter'],
    ['outer_diameter', 'outerDiameter'],
    ['outDiameter', 'outerDiameter'],
    ['elev', 'elevation'],
    ['plane', 'plan'],
    ['nmae', 'name'],
  ])('takes %s for %s', (typed, meant) => {
    expect(nearestName(typed, known)).toBe(meant);
  });

  it.each(['colour', 'mass', 'x', '', 'at'])('takes %s for nothing', (typed) => {
    expect(nearestName(typed, known)).toBeUndefined();
  });

  it('has nothing to offer from an empty list', () => {
    expect(nearestName('length', [])).toBeUndefined();
  });
});
