import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placeLabels } from '../../../packages/demo/src/charts/place-labels.js';

describe('placeLabels', () => {
  it('puts labels that would overlap into rows, and gives up where rows are out', () => {
    const wishes = [100, 105, 110].map((x) => ({ x, width: 40 }));
    expect(placeLabels(wishes, { left: 0, right: 300, rows: 2 })).toEqual([
      { x: 100, row: 0 },
      { x: 105, row: 1 },
      undefined,
    ]);
  });

  it('keeps a label inside the strip', () => {
    expect(placeLabels([{ x: 0, width: 40 }], { left: 10, right: 300, rows: 1 })).toEqual([
      { x: 30, row: 0 },
    ]);
  });

  it('never lets two labels of a row overlap (property)', () => {
    const wish = fc.record({ x: fc.integer({ min: 0, max: 400 }), width: fc.integer({ min: 5, max: 60 }) });
    fc.assert(
      fc.property(fc.array(wish, { maxLength: 20 }), (wishes) => {
        const places = placeLabels(wishes, { left: 0, right: 400, rows: 3 });
        const boxes = places.flatMap((place, index) =>
          place ? [{ ...place, half: wishes[index]!.width / 2 }] : [],
        );
        boxes.forEach((one, index) => {
          for (const other of boxes.slice(index + 1)) {
            if (one.row !== other.row) continue;
            expect(Math.abs(one.x - other.x)).toBeGreaterThanOrEqual(one.half + other.half - 1e-9);
          }
        });
      }),
    );
  });
});
