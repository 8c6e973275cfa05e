import { describe, expect, it } from 'vitest';
import { layoutBounds } from '../../../packages/demo/src/charts/bounds-geometry.js';

describe('layoutBounds', () => {
  it('keeps likely between free and firm, on one scale with the wanted speed', () => {
    const rows = [{ name: 'First whirl', lower: 4000, estimate: 6000, upper: 9000 }];
    const { rows: drawn, wanted, left } = layoutBounds({ rows, wanted: 3000 }, 700);
    const [row] = drawn;
    const scale = (row!.to - row!.from) / 5000;
    expect(row!.mark).toBeCloseTo(row!.from + 2000 * scale, 9);
    expect(wanted).toBeCloseTo(left + 3000 * scale, 9);
  });

  it('makes room for a wanted speed beyond every range', () => {
    const rows = [{ name: 'First whirl', lower: 10, estimate: 11, upper: 12 }];
    const figure = layoutBounds({ rows, wanted: 100 }, 700);
    expect(figure.wanted).toBeLessThan(figure.right);
  });
});
