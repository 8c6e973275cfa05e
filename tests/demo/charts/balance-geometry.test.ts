import { describe, expect, it } from 'vitest';
import {
  balanceCircles,
  bladePath,
  clockSpot,
  massReach,
} from '../../../packages/demo/src/charts/balance-geometry.js';

const DEGREE = Math.PI / 180;

describe('clockSpot', () => {
  it('counts clockwise from the top, as one reads a clock', () => {
    expect(clockSpot(0, 10).y).toBeCloseTo(-10, 12);
    expect(clockSpot(90 * DEGREE, 10).x).toBeCloseTo(10, 12);
    expect(clockSpot(180 * DEGREE, 10).y).toBeCloseTo(10, 12);
    expect(clockSpot(270 * DEGREE, 10).x).toBeCloseTo(-10, 12);
  });
});

describe('massReach', () => {
  it('gives areas in proportion to the masses', () => {
    const reach = (mass: number) => massReach(mass, { largest: 16, reach: 10 });
    expect(reach(16)).toBe(10);
    expect(reach(4)).toBe(5);
  });

  it('draws no mass as nothing and a tiny one so that it can be seen', () => {
    expect(massReach(0, { largest: 16, reach: 10 })).toBe(0);
    expect(massReach(0.01, { largest: 16, reach: 10 })).toBe(2.5);
  });
});

describe('bladePath', () => {
  it('reaches its tip in the direction of the blade', () => {
    expect(bladePath(0, { reach: 70, hub: 14 })).toMatch(/[ Q]0 -70Q/);
    expect(bladePath(90 * DEGREE, { reach: 70, hub: 14 })).toMatch(/[ Q]70 0Q/);
  });
});

describe('balanceCircles', () => {
  // Derived: 10 g alone shakes 5; as found it shakes 8, made by 16 g opposite 20°; |8 − 5 e^{j(φ − 20°)}| by the cosine rule.
  const alone = 5;
  const angle = 20 * DEGREE;
  const trials = [0, 120, 240].map((degrees) => ({
    angle: degrees * DEGREE,
    amplitude: Math.sqrt(64 + alone ** 2 - 80 * Math.cos(degrees * DEGREE - angle)),
  }));
  const drawn = balanceCircles(
    { initial: 8, trials, effect: alone, angle },
    { width: 300, edge: 20, most: 400 },
  );

  it('draws every circle through the one point where they meet', () => {
    for (const { centre, radius } of drawn.circles) {
      expect(Math.hypot(drawn.meeting.x - centre.x, drawn.meeting.y - centre.y)).toBeCloseTo(radius, 9);
    }
  });

  it('puts the middles of the circles and the correction on the first circle', () => {
    for (const { x, y } of [...drawn.circles.map(({ centre }) => centre), drawn.correction]) {
      expect(Math.hypot(x, y)).toBeCloseTo(drawn.base, 9);
    }
  });

  it('keeps all of it in the picture, with the edge left about it', () => {
    const { middle, height, circles, base } = drawn;
    for (const { centre, radius } of [...circles, { centre: { x: 0, y: 0 }, radius: base }]) {
      expect(middle.x + centre.x - radius).toBeGreaterThanOrEqual(20 - 1e-9);
      expect(middle.x + centre.x + radius).toBeLessThanOrEqual(280 + 1e-9);
      expect(middle.y + centre.y - radius).toBeGreaterThanOrEqual(20 - 1e-9);
      expect(middle.y + centre.y + radius).toBeLessThanOrEqual(height - 20 + 1e-9);
    }
  });
});
