import { exampleLine } from '@sternline/core';
import { describe, expect, it } from 'vitest';
import { layoutTolerances, SHED_TOLERANCES } from '../../../packages/demo/src/model/layout-tolerances.js';
import { getIn } from '../../../packages/demo/src/model/set-in.js';

const line = exampleLine();

describe('layoutTolerances', () => {
  const paths = layoutTolerances(line, SHED_TOLERANCES);

  it('names numbers that the line has', () => {
    for (const path of Object.keys(paths)) expect(typeof getIn(line, path)).toBe('number');
  });

  it('gives each kind of measure its own', () => {
    expect(paths['shafts[1].supports[1].at']).toBe(0.0005);
    expect(paths['shafts[1].outerDiameter']).toBe(0.00001);
    expect(paths['shafts[0].elevation']).toBeCloseTo(Math.PI / 360, 12);
  });

  it('leaves out what is exact', () => {
    const exact = layoutTolerances(line, { place: 0, diameter: 0, angle: 0.01 });
    expect(Object.keys(exact).every((path) => /elevation|plan/.test(path))).toBe(true);
  });
});
