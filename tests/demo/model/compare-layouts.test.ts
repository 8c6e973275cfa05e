import { assess, exampleLine } from '@sternline/core';
import { describe, expect, it } from 'vitest';
import { compareLayouts } from '../../../packages/demo/src/model/compare-layouts.js';
import { rethickenShaft } from '../../../packages/demo/src/model/edit-line.js';

const five = exampleLine();
const six = rethickenShaft(five, { shaft: 1, outerDiameter: 0.006 });
const speed = 300;

describe('compareLayouts', () => {
  const compared = compareLayouts(
    [
      { id: 'a', line: five },
      { id: 'b', line: six },
    ],
    speed,
  );
  const row = (name: string) => compared.figures.find((figure) => figure.name === name)!;

  it('shows what assess says of each', () => {
    expect(compared.assessments).toEqual([assess(five, { speed }), assess(six, { speed })]);
    expect(row('Speed limit').values).toEqual([
      assess(five, { speed }).speedLimit.speed,
      assess(six, { speed }).speedLimit.speed,
    ]);
  });

  it('marks the stiffer shaft as better in its whirl', () => {
    expect(row('First whirl, driven by unbalance').best).toEqual([1]);
  });

  it('marks none where all are alike', () => {
    expect(row('Largest joint angle').best).toEqual([]);
  });
});
