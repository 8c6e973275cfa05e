import { axisMark, exitEllipse, type Surface, type Vector3 } from '@sternline/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DEGREE } from './line-of.js';

const dot = (a: Vector3, b: Vector3) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const between = (a: Vector3, b: Vector3): Vector3 => [b[0] - a[0], b[1] - a[1], b[2] - a[2]];

const part = fc.double({ min: -1, max: 1, noNaN: true });
const axes = fc.record({
  point: fc.tuple(part, part, part),
  direction: fc.tuple(fc.double({ min: 0.3, max: 1, noNaN: true }), part, part),
});
const surfaces = fc.record({
  through: fc.tuple(part, part, part),
  riseAft: fc.double({ min: 0.8, max: 1.5, noNaN: true }),
  riseToPort: fc.double({ min: -0.2, max: 0.2, noNaN: true }),
});

describe('axisMark', () => {
  // By hand: the tube falls 1 in 4 and goes to port 1 in 10 from x 0.14, z 0.03.
  it.each([
    [0.14, 0, 0.03],
    [0.2, 0.006, 0.015],
    [0.44, 0.03, -0.045],
    [0, -0.014, 0.065],
  ])('at the bulkhead %f has offset %f and height %f', (at, offset, height) => {
    const axis = { point: [0.14, 0, 0.03], direction: [10, 1, -2.5] } as const;
    const got = axisMark(axis, { through: [at, 5, -3], normal: [-2, 0, 0] });
    expect(Math.abs(got.at - at)).toBeLessThan(1e-15);
    expect(Math.abs(got.offset - offset)).toBeLessThan(1e-15);
    expect(Math.abs(got.height - height)).toBeLessThan(1e-15);
    expect(Math.abs(got.incidence - Math.atan(Math.hypot(0.1, 0.25)))).toBeLessThan(1e-14);
  });

  it('lies on the axis and on the surface', () => {
    fc.assert(
      fc.property(axes, surfaces, (axis, surface) => {
        const { point } = axisMark(axis, surface);
        const [dx, dy, dz] = between(surface.through, point);
        const size = 1 + Math.hypot(...point);
        const rise = dx * Math.tan(surface.riseAft) + dy * Math.tan(surface.riseToPort);
        expect(Math.abs(dz - rise)).toBeLessThan(1e-12 * size * Math.tan(1.5));
        const along = between(axis.point, point);
        const length = Math.hypot(...axis.direction);
        const aside = Math.hypot(...along) ** 2 - (dot(along, axis.direction) / length) ** 2;
        expect(aside).toBeLessThan(1e-12 * size ** 2);
      }),
    );
  });

  it('refuses an axis along the surface, and what is no direction', () => {
    const deck: Surface = { through: [0, 0, 0.1], normal: [0, 0, 1] };
    expect(() => axisMark({ point: [0, 0, 0], direction: [1, 0, 0] }, deck)).toThrow(
      new RangeError('axisMark: axis must be one that goes through the surface, not along it, got 0'),
    );
    expect(() => axisMark({ point: [0, 0, 0], direction: [0, 0, 0] }, deck)).toThrow(
      new RangeError('axisMark: axis.direction must be three finite numbers, not all zero, got a list of 3'),
    );
    const axis = { point: [0, 0, 0], direction: [1, 0, 0] } as const;
    expect(() => axisMark(axis, { through: [0, 0, 0], normal: [0, 0, 0] })).toThrow(
      new RangeError('axisMark: surface.normal must be three finite numbers, not all zero, got a list of 3'),
    );
    expect(() => axisMark(axis, { through: [0, 0, 0], riseAft: 2, riseToPort: 0 })).toThrow(
      new RangeError('axisMark: surface.riseAft must be an angle in rad between −π/2 and π/2, got 2'),
    );
    expect(() =>
      axisMark({ ...axis, point: [NaN, 0, 0] }, { through: [0, 0, 0], normal: [1, 0, 0] }),
    ).toThrow(
      new RangeError('axisMark: axis.point must be three finite numbers, as the surface, got a list of 3'),
    );
  });
});

describe('exitEllipse', () => {
  it('is a circle where the tube goes straight through', () => {
    const hole = exitEllipse(
      { point: [0, 0, 0], direction: [1, 0, 0] },
      { diameter: 0.008, surface: { through: [0.1, 0, 0], normal: [1, 0, 0] } },
    );
    expect([hole.semiMajor, hole.semiMinor]).toEqual([0.004, 0.004]);
    expect(hole.majorDirection).toEqual([0, 0, 1]);
  });

  // A tube that falls by 14° through a flat bottom: its hole is d/sin 14° long, since incidence is 90° less 14°.
  it('is long where the tube leaves a flat bottom at a small angle', () => {
    const hole = exitEllipse(
      { point: [0, 0, 0.03], direction: [Math.cos(14 * DEGREE), 0, -Math.sin(14 * DEGREE)] },
      { diameter: 0.008, surface: { through: [0, 0, 0], riseAft: 0, riseToPort: 0 } },
    );
    expect(Math.abs((2 * hole.semiMajor * Math.sin(14 * DEGREE)) / 0.008 - 1)).toBeLessThan(1e-12);
    expect(Math.abs(hole.at - 0.03 / Math.tan(14 * DEGREE))).toBeLessThan(1e-15 * 40);
    expect(hole.majorDirection.map((x) => x.toFixed(12))).toEqual([1, 0, 0].map((x) => x.toFixed(12)));
  });

  it('lies on the tube and in the surface all round, and its area times cos i is the tube’s section', () => {
    fc.assert(
      fc.property(axes, surfaces, fc.double({ min: 0, max: 6.3, noNaN: true }), (axis, surface, turn) => {
        const diameter = 0.01;
        const hole = exitEllipse(axis, { diameter, surface });
        fc.pre(hole.incidence < 1.5);
        const [a, b] = [hole.semiMajor * Math.cos(turn), hole.semiMinor * Math.sin(turn)];
        const [u, v] = [hole.majorDirection, hole.minorDirection];
        const rim: Vector3 = [a * u[0] + b * v[0], a * u[1] + b * v[1], a * u[2] + b * v[2]];
        const along = dot(rim, axis.direction) / Math.hypot(...axis.direction);
        const radius = Math.sqrt(dot(rim, rim) - along ** 2);
        expect(Math.abs(radius / (diameter / 2) - 1)).toBeLessThan(1e-9);
        const section = (Math.PI / 4) * diameter ** 2;
        expect(Math.abs((hole.area * Math.cos(hole.incidence)) / section - 1)).toBeLessThan(1e-12);
        const rise = rim[0] * Math.tan(surface.riseAft) + rim[1] * Math.tan(surface.riseToPort);
        expect(Math.abs(rim[2] - rise)).toBeLessThan(1e-9);
        expect(Math.abs(dot(u, v))).toBeLessThan(1e-12);
        hole.ends.forEach((end, i) => {
          const reach = Math.hypot(...between(hole.point, end));
          expect(Math.abs(reach / (i < 2 ? hole.semiMajor : hole.semiMinor) - 1)).toBeLessThan(1e-9);
        });
      }),
    );
  });

  it('refuses a tube without a diameter', () => {
    expect(() =>
      exitEllipse(
        { point: [0, 0, 0], direction: [1, 0, 0] },
        { diameter: 0, surface: { through: [0, 0, 0], normal: [1, 0, 0] } },
      ),
    ).toThrow(new RangeError('exitEllipse: diameter must be a finite number greater than 0, got 0'));
  });
});
