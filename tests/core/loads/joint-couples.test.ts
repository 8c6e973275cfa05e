import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exampleLine, jointCoupleCourse, jointCouples } from '@sternline/core';
import { DEGREE, lineOf } from '../line/line-of.js';

describe('jointCouples', () => {
  it('of 10 N·m at 10°: up to 1.76327 on the driving side and 1.736482 on the driven one', () => {
    // T tan β and T sin β, statics of the cross; limits of cardan shaft catalogues
    const [couple] = jointCouples(lineOf([{}, { elevation: 10 * DEGREE }]), { torque: 10 });
    expect(couple!.driving.largest).toBeCloseTo(1.76327, 5);
    expect(couple!.driven.largest).toBeCloseTo(1.736482, 6);
  });

  it('are half still and half turning', () => {
    const [couple] = jointCouples(lineOf([{}, { plan: 0.2 }]), { torque: -3 });
    expect(couple!.driving.mean + couple!.driving.second).toBeCloseTo(couple!.driving.largest, 12);
    expect(couple!.driven.mean).toBeCloseTo((3 * Math.sin(0.2)) / 2, 12);
    expect(couple!.driven.second).toBeCloseTo((3 * Math.tan(0.2)) / 2, 12);
  });

  it('are none of a joint in line or of another kind', () => {
    const none = { mean: 0, second: 0, largest: 0 };
    const [straight, flexible] = jointCouples(lineOf([{}, {}, { plan: 0.1 }], ['universal', 'flexible']), {
      torque: 1,
    });
    expect(straight!.driving).toEqual(none);
    expect(flexible!.driven).toEqual(none);
  });

  it('turn down no number', () => {
    expect(() => jointCouples(exampleLine(), { torque: NaN })).toThrow(
      'jointCouples: torque must be a finite number, got NaN',
    );
  });
});

describe('jointCoupleCourse', () => {
  /** By vectors: the cross hands over a couple along the normal of both pins. */
  function byVectors(angle: number, input: number): { driving: number; driven: number } {
    type V = readonly [number, number, number];
    const cross = ([a, b, c]: V, [d, e, f]: V): V => [b * f - c * e, c * d - a * f, a * e - b * d];
    const dot = ([a, b, c]: V, [d, e, f]: V) => a * d + b * e + c * f;
    const u: V = [1, 0, 0];
    const v: V = [Math.cos(angle), Math.sin(angle), 0];
    const pin: V = [0, -Math.sin(input), Math.cos(input)];
    const normal = cross(pin, cross(v, pin));
    const size = 1 / dot(normal, u);
    const aside = (axis: V) => Math.hypot(...normal.map((n, i) => size * (n - dot(normal, axis) * axis[i]!)));
    return { driving: aside(u), driven: aside(v) };
  }

  it('is what vectors give at any position', () => {
    const angles = fc.double({ min: 0, max: 1.2, noNaN: true });
    const inputs = fc.double({ min: -10, max: 10, noNaN: true });
    fc.assert(
      fc.property(angles, inputs, (angle, input) => {
        const { driving, driven } = jointCoupleCourse({ angle, torque: 1, inputAngles: [input] });
        const expected = byVectors(angle, input);
        expect(driving[0]).toBeCloseTo(expected.driving, 10);
        expect(driven[0]).toBeCloseTo(expected.driven, 10);
      }),
    );
  });

  it('turns down a right angle', () => {
    expect(() => jointCoupleCourse({ angle: Math.PI / 2, torque: 1, inputAngles: [] })).toThrow(
      'jointCoupleCourse: angle must be an angle in rad from 0 to below π/2, got 1.57',
    );
    expect(() => jointCoupleCourse({ angle: 0.1, torque: NaN, inputAngles: [] })).toThrow(
      'jointCoupleCourse: torque must be a finite number, got NaN',
    );
  });
});
