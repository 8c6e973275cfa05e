import { describe, expect, it } from 'vitest';
import { yokeViews, type Direction, type YokeLine } from '../../../packages/demo/src/charts/yoke-geometry.js';

const DEGREE = Math.PI / 180;
const falling = (angle: number): Direction => [Math.cos(angle), 0, -Math.sin(angle)];
const LEVEL: Direction = [1, 0, 0];

function single(angle: number): YokeLine {
  return { shafts: [LEVEL, falling(angle)], twists: [0, 0], universal: [true] };
}

describe('yokeViews', () => {
  it('puts the driving pin athwart at 0, square to a bend in the side view, and the driven pin leans by the angle', () => {
    const [view] = yokeViews(single(20 * DEGREE), 0);
    expect(Math.abs(view!.driving.right)).toBeCloseTo(1, 12);
    expect(view!.driving.up).toBeCloseTo(0, 12);
    // Seen from ahead, a pin that leans by β out of the picture is shortened to cos β. Derived.
    expect(Math.abs(view!.driven.up)).toBeCloseTo(Math.cos(20 * DEGREE), 12);
  });

  it('turns from port upwards, anticlockwise looking aft', () => {
    const from = yokeViews(single(20 * DEGREE), 0)[0]!.driving;
    const to = yokeViews(single(20 * DEGREE), Math.PI / 2)[0]!.driving;
    expect(from.right * to.up - from.up * to.right).toBeCloseTo(1, 12);
  });

  it('follows tan of the output = cos β · tan of the input (A. Bromwich, "Hooke’s joint", from memory)', () => {
    const angle = 25 * DEGREE;
    for (const turn of [0.3, 0.8, 1.2]) {
      const { driven } = yokeViews(single(angle), turn)[0]!;
      // Seen along the driving shaft, heights of the driven pin are those in its own plane times cos β.
      const inItsPlane = Math.atan2(-driven.right, driven.up / Math.cos(angle));
      expect(Math.abs(Math.tan(inItsPlane))).toBeCloseTo(Math.cos(angle) * Math.tan(turn), 9);
    }
  });

  it('brings both driving pins of a line in phase to the same angle: such a line turns evenly', () => {
    const line: YokeLine = {
      shafts: [LEVEL, falling(10 * DEGREE), falling(20 * DEGREE)],
      twists: [0, 0, 0],
      universal: [true, true],
    };
    const [, second] = yokeViews(line, 0.7);
    // Equal angles in one plane: the last pin stands where the first one does, seen along the last shaft.
    expect(Math.abs(second!.driven.right / second!.driven.up)).toBeCloseTo(
      1 / (Math.tan(0.7) * Math.cos(10 * DEGREE)),
      9,
    );
  });

  it('draws nothing for a line without a universal joint', () => {
    expect(yokeViews({ shafts: [LEVEL, LEVEL], twists: [0, 0], universal: [false] }, 1)).toEqual([]);
  });
});
