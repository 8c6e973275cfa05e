import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exampleLine, lineTwist, shaftStress } from '@sternline/core';
import { jointOf, lineOf, shaftOf, steel } from '../../support/lines.js';

const INCH = 0.0254;
const POUND_INCH = 0.112984829;
const PSI = 6894.757293;

describe('lineTwist', () => {
  it.each([
    // Printed: 0.050724 and 0.052590 rad, https://drbuc2jl8158i.cloudfront.net/shared/Engeneering/mecmovies/ch06/m06_18_s052.html
    [43.768, 36, 0.75, 0.050724],
    [131.303, 96, 1.25, 0.05259],
  ])('of %f lb·ft on %f in of %f in', (poundFeet, length, diameter, angle) => {
    const material = { ...steel, shearModulus: 12e6 * PSI };
    const shaft = shaftOf({ length: length * INCH, outerDiameter: diameter * INCH, material });
    const { total } = lineTwist(lineOf([shaft]), { torque: 12 * poundFeet * POUND_INCH });
    expect(Math.abs(total - angle)).toBeLessThan(2e-6);
  });

  it('of 60 kW at 150 rpm, a quarter over: 74 mm carry it at 60 MPa and twist by 0.0507 rad over 2.5 m', () => {
    // http://www.expertsmind.com/questions/discover-the-angle-of-twist-30129051.aspx
    const torque = (1.25 * 60e3) / (150 * (Math.PI / 30));
    const shaft = shaftOf({ length: 2.5, outerDiameter: 0.074, material: { ...steel, shearModulus: 80e9 } });
    const { total, shafts } = lineTwist(lineOf([shaft]), { torque });
    expect(total).toBeCloseTo(0.0507, 4);
    expect(shafts[0]!.shear / 1e6).toBeCloseTo(60, 1);
  });

  it('adds the joints, and turns with the sign of the torque', () => {
    const line = lineOf([shaftOf(), shaftOf()], [jointOf({ torsionalStiffness: 50 })]);
    const { total, joints, shafts } = lineTwist(line, { torque: -0.5 });
    expect(joints[0]).toBe(-0.01);
    expect(total).toBeCloseTo(2 * shafts[0]!.angle - 0.01, 12);
    expect(shafts[0]!.angle).toBeCloseTo(-0.5 / shafts[0]!.stiffness, 12);
  });

  it('turns down no number', () => {
    expect(() => lineTwist(exampleLine(), { torque: NaN })).toThrow(
      'lineTwist: torque must be a finite number, got NaN',
    );
  });
});

describe('shaftStress', () => {
  it('of a plain bar: 16T/πd³, 32M/πd³', () => {
    // closed forms; 5 mm, 0.2 N·m, 0.1 N·m: 8.14873 MPa each, by hand
    const { shear, bending, vonMises, yieldFactor } = shaftStress(shaftOf(), {
      torque: 0.2,
      bendingMoment: 0.1,
    });
    expect(shear / 1e6).toBeCloseTo(8.14873, 5);
    expect(bending / 1e6).toBeCloseTo(8.14873, 5);
    expect(vonMises / 1e6).toBeCloseTo(2 * 8.14873, 4);
    expect(yieldFactor).toBeCloseTo(250e6 / vonMises, 9);
  });

  it('scales with the third power of size, and a bore of 0.8 takes 0.8⁴ of it', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 10, noNaN: true }), (scale) => {
        const one = shaftStress(shaftOf(), { torque: 0.2, bendingMoment: 0.3 });
        const other = shaftStress(shaftOf({ outerDiameter: 0.005 * scale }), {
          torque: 0.2,
          bendingMoment: 0.3,
        });
        expect(Math.abs((other.vonMises * scale ** 3) / one.vonMises - 1)).toBeLessThan(1e-12);
      }),
    );
    const solid = shaftStress(shaftOf(), { torque: 1 });
    const tube = shaftStress(shaftOf({ innerDiameter: 0.004 }), { torque: 1 });
    expect(tube.shear / solid.shear).toBeCloseTo(1 / (1 - 0.8 ** 4), 12);
  });

  it('never yields without load, and turns down no number', () => {
    expect(shaftStress(shaftOf(), { torque: 0 }).yieldFactor).toBe(Infinity);
    expect(() => shaftStress(shaftOf(), { torque: Infinity })).toThrow(
      'shaftStress: torque must be a finite number, got Infinity',
    );
    expect(() => shaftStress(shaftOf(), { torque: 1, bendingMoment: NaN })).toThrow(
      'shaftStress: bendingMoment must be a finite number, got NaN',
    );
  });
});
