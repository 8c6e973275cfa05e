import { describe, expect, it } from 'vitest';
import { orderBars } from '../../../packages/demo/src/charts/order-geometry.js';

describe('orderBars', () => {
  it('draws all bars on one scale that holds the farthest whisker', () => {
    expect(
      orderBars([
        { amplitude: 3, amplitudeError: 1 },
        { amplitude: 1, amplitudeError: 2 },
      ]),
    ).toEqual([
      { length: 0.75, whisker: [0.5, 1] },
      { length: 0.25, whisker: [0, 0.75] },
    ]);
  });

  it('draws nothing where nothing is measured', () => {
    expect(orderBars([{ amplitude: 0, amplitudeError: 0 }])).toEqual([{ length: 0, whisker: [0, 0] }]);
  });
});
