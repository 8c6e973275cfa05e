import { exampleLine } from '@sternline/core';
import { describe, expect, it } from 'vitest';
import { layoutDrawing } from '../../../packages/demo/src/charts/drawing-geometry.js';

const line = exampleLine();
const room = { width: 900, height: 300, balloonRow: 60, apart: 84, barUnit: 0.001 };
const drawing = layoutDrawing(line, room);
const [side, plan] = drawing.views;

describe('layoutDrawing', () => {
  it('draws both views to one scale on one keel axis', () => {
    expect(side?.name).toBe('side');
    expect(plan?.name).toBe('plan');
    side?.shafts.forEach((shaft, index) => {
      expect(shaft.origin.x).toBeCloseTo(plan!.shafts[index]!.origin.x, 9);
    });
    expect(side!.keel).toBeLessThan(plan!.keel);
  });

  it('shows lengths and angles true where the shaft lies in the view', () => {
    const shaft = side!.shafts[1]!;
    expect(shaft.length).toBeCloseTo(0.376 * drawing.scale, 6);
    // Falling aft by 14° is a turn clockwise on the screen.
    expect(shaft.turn).toBeCloseTo(14, 9);
    expect(side!.joints[0]!.turnAfter - side!.joints[0]!.turn).toBeCloseTo(14, 9);
  });

  it('shortens a sloping shaft in the plan by the cosine of its slope', () => {
    const shaft = plan!.shafts[1]!;
    expect(shaft.length).toBeCloseTo(0.376 * Math.cos((14 * Math.PI) / 180) * drawing.scale, 6);
    expect(shaft.turn).toBeCloseTo(0, 9);
  });

  it('begins each shaft where the one before it ends', () => {
    const before = side!.shafts[0]!;
    expect(side!.shafts[1]!.origin.x).toBeCloseTo(before.origin.x + before.length, 6);
  });

  it('numbers every part from the motor aft and keeps the marks apart', () => {
    const { balloons } = drawing;
    expect(balloons.map(({ number }) => number)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9]);
    expect(balloons.map(({ id }) => id)).toEqual([
      'motor',
      'support-0-0',
      'shaft-0',
      'support-0-1',
      'joint-0',
      'support-1-0',
      'shaft-1',
      'support-1-1',
      'propeller',
    ]);
    for (let index = 1; index < balloons.length; index++) {
      expect(balloons[index]!.x - balloons[index - 1]!.x).toBeGreaterThanOrEqual(84 - 1e-9);
    }
  });

  it('keeps the line inside its room, wide or narrow', () => {
    for (const width of [340, 900, 2000]) {
      const { views } = layoutDrawing(line, { ...room, width, apart: 36 });
      for (const { shafts, keel } of views) {
        expect(keel).toBeGreaterThan(0);
        expect(keel).toBeLessThan(room.height);
        for (const { origin, length, turn } of shafts) {
          const end = origin.x + length * Math.cos((turn * Math.PI) / 180);
          expect(origin.x).toBeGreaterThanOrEqual(0);
          expect(end).toBeLessThanOrEqual(width);
        }
      }
    }
  });

  it('gives a bar of a round length', () => {
    expect(drawing.bar.pixels / drawing.scale).toBeCloseTo(drawing.bar.length, 12);
    expect(drawing.bar.length).toBeCloseTo(0.1, 12);
    expect(drawing.bar.pixels).toBeLessThanOrEqual(room.width / 5);
    // In inches it is 1, 2 or 5 × a power of ten of them.
    expect(layoutDrawing(line, { ...room, barUnit: 0.0254 }).bar.length / 0.0254).toBeCloseTo(5, 9);
  });
});
