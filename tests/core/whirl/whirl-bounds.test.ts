import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bushSlope, criticalSpeeds, parseShaftLine, whirlBounds, type ShaftLine } from '@sternline/core';
import { beamUnit, lineOf, shaftOf, steel, uniformShaft } from '../../support/lines.js';
import { usualLine } from '../../support/random-lines.js';

const slender = { length: 1, outerDiameter: 0.001 };
const bending = steel.youngsModulus * (Math.PI / 64) * slender.outerDiameter ** 4;

/** λ² of two pins with equal springs κ = KL/EI against slope: 4h = −κ (tan h + tanh h), λ = 2h, π/2 < h (derived). */
function springPinned(kappa: number): number {
  let [low, high] = [Math.PI / 2 + 1e-12, 2.3650204];
  for (let step = 0; step < 200; step++) {
    const h = (low + high) / 2;
    if (4 * h + kappa * (Math.tan(h) + Math.tanh(h)) < 0) low = h;
    else high = h;
  }
  return (low + high) ** 2;
}

describe('angular stiffness of a support', () => {
  it.each([0.1, 1, 10, 100, 1e4])('of %f EI/L at both ends of a shaft', (kappa) => {
    const angularStiffness = (kappa * bending) / slender.length;
    const line = uniformShaft(['free', 'free'], {
      ...slender,
      supports: [
        { at: 0, angularStiffness },
        { at: 1, angularStiffness },
      ],
    });
    const [first] = criticalSpeeds(line, { count: 1 });
    // 1e-4 mesh
    expect(Math.abs(first!.speed / (springPinned(kappa) * beamUnit(line.shafts[0]!)) - 1)).toBeLessThan(1e-4);
  });

  it('holds a shaft on one bush: a disc on the end of a rigid bar is a pendulum on the spring', () => {
    const line = lineOf([
      shaftOf({
        length: 0.2,
        outerDiameter: 0.05,
        material: { ...steel, density: 1 },
        supports: [{ at: 0, angularStiffness: 30 }],
        discs: [{ name: 'disc', at: 0.2, mass: 2, polarInertia: 0, diametralInertia: 0 }],
      }),
    ]);
    // √(K/mL²); the bar takes 3e-4 off
    const [first] = criticalSpeeds(line, { count: 1 });
    expect(Math.abs(first!.speed / Math.sqrt(30 / (2 * 0.04)) - 1)).toBeLessThan(1e-3);
  });
});

describe('angularStiffness in a line as entered', () => {
  const line = (support: object): unknown => ({
    shafts: [{ length: 0.2, outerDiameter: 0.005, material: 'carbon steel', supports: [support] }],
  });

  it('holds what nothing else holds, and must be a stiffness', () => {
    expect(parseShaftLine(line({ at: 0, angularStiffness: 5 })).shafts[0]!.supports[0]).toEqual({
      at: 0,
      angularStiffness: 5,
    });
    expect(() => parseShaftLine(line({ at: 0 }))).toThrow(/free to swing/);
    expect(() => parseShaftLine(line({ at: 0, angularStiffness: 0 }))).toThrow(
      /supports\[0\]\.angularStiffness must be a finite stiffness in N·m\/rad greater than 0, got 0/,
    );
  });
});

describe('bushSlope', () => {
  const shaft = shaftOf({ outerDiameter: 0.005 });
  const ei = steel.youngsModulus * (Math.PI / 64) * 0.005 ** 4;

  it('is 3EI/ℓ on two edges, kℓ²/12 on an elastic bed, and both in a row', () => {
    // a beam on two pins with a couple at one end turns there by Mℓ/3EI; ∫ (k/ℓ) x² dx = kℓ²/12
    const rigid = bushSlope(shaft, { at: 0, length: 0.01 })!;
    expect(rigid.stiffness).toBeCloseTo((3 * ei) / 0.01, 6);
    const soft = bushSlope(shaft, { at: 0, length: 0.01, radialStiffness: 1e3 })!;
    expect(Math.abs(soft.stiffness / (1e3 * 1e-4 * (1 / 12)) - 1)).toBeLessThan(1e-4);
    const both = bushSlope(shaft, { at: 0, length: 0.01, radialStiffness: 1e8 })!;
    expect(1 / both.stiffness).toBeCloseTo(1 / rigid.stiffness + 12 / (1e8 * 1e-4), 12);
  });

  it('leaves c/ℓ free, and nothing to say without a length', () => {
    expect(bushSlope(shaft, { at: 0, length: 0.01, bore: 0.00504 })!.freeSlope).toBeCloseTo(0.004, 12);
    expect(bushSlope(shaft, { at: 0, length: 0.01 })!.freeSlope).toBe(0);
    expect(bushSlope(shaft, { at: 0 })).toBeUndefined();
  });
});

/** The line with bushes a few diameters long at its supports, and some clearance. */
function bushed(line: ShaftLine, clearance: number): ShaftLine {
  const shafts = line.shafts.map((shaft) => ({
    ...shaft,
    supports: shaft.supports.map((support) => ({
      ...support,
      length: 2 * shaft.outerDiameter,
      bore: shaft.outerDiameter * (1 + clearance),
    })),
  }));
  return { ...line, shafts };
}

describe('whirlBounds', () => {
  it('of a bare shaft runs from 1 to 2.27', () => {
    // 22.373/9.8696, W. T. Thomson, "Theory of Vibration with Applications", Table 9.5-1
    const [first] = whirlBounds(uniformShaft(['pinned', 'pinned'], slender), { count: 1 });
    expect(first!.upper / first!.lower).toBeCloseTo(22.373 / 9.8696, 3);
    // no length, no hold
    expect(first!.estimate).toBeCloseTo(first!.lower, 9);
  });

  it('estimates bushes without clearance as springs of 3EI/ℓ', () => {
    const line = bushed(uniformShaft(['pinned', 'pinned'], slender), 0);
    const [first] = whirlBounds(line, { count: 1 });
    const kappa = 3 / 0.002;
    const expected = springPinned(kappa) * beamUnit(line.shafts[0]!);
    expect(Math.abs(first!.estimate / expected - 1)).toBeLessThan(1e-4);
  });

  it('lies between its bounds, which are those of pinned and fixed supports', () => {
    fc.assert(
      fc.property(usualLine, fc.double({ min: 0, max: 0.01, noNaN: true }), (line, clearance) => {
        const own = bushed(line, clearance);
        const bounds = whirlBounds(own, { count: 2 });
        const fixed: ShaftLine = {
          ...own,
          shafts: own.shafts.map((shaft) => ({
            ...shaft,
            supports: shaft.supports.map((support) => ({ ...support, fixesSlope: true })),
          })),
        };
        const upper = criticalSpeeds(fixed, { count: 2 });
        const lower = criticalSpeeds(own, { count: 2 });
        bounds.forEach((bound, mode) => {
          expect(bound.upper).toBeCloseTo(upper[mode]!.speed, 6);
          expect(bound.lower).toBeCloseTo(lower[mode]!.speed, 6);
          // three meshes, each within 1e-4
          expect(bound.estimate).toBeGreaterThan(bound.lower * (1 - 2e-4));
          expect(bound.estimate).toBeLessThan(bound.upper * (1 + 2e-4));
        });
      }),
      { numRuns: 25, seed: 1 },
    );
  });

  it('holds as firmly as the slope of its own mode asks for', () => {
    const line = bushed(uniformShaft(['pinned', 'pinned'], { length: 0.3 }), 0.004);
    const amplitude = 5e-4;
    const [first] = whirlBounds(line, { count: 1, amplitude });
    const shaft = line.shafts[0]!;
    first!.supports.forEach(({ support, angularStiffness }) => {
      const own = shaft.supports[support]!;
      const node = Array.from(first!.shape.at).findIndex((at) => Math.abs(at - own.at) < 1e-9);
      const slope = Math.abs(first!.shape.slope[node]!) * amplitude;
      const { stiffness, freeSlope } = bushSlope(shaft, own)!;
      expect(slope).toBeGreaterThan(freeSlope);
      expect(angularStiffness / (stiffness * (1 - freeSlope / slope))).toBeCloseTo(1, 3);
    });
  });

  it('is pinned while the whirl leans within the clearance, and firmer the wider it is', () => {
    const line = bushed(uniformShaft(['pinned', 'pinned'], { length: 0.3 }), 0.004);
    const at = (amplitude: number): number => whirlBounds(line, { count: 1, amplitude })[0]!.estimate;
    const { lower } = whirlBounds(line, { count: 1 })[0]!;
    // slope at the pins of a half sine: π/L of its amplitude; free until 0.002 rad
    expect(at((0.99 * 0.002 * 0.3) / Math.PI)).toBeCloseTo(lower, 6);
    const speeds = [2e-4, 3e-4, 5e-4, 1e-3, 1e-2].map(at);
    speeds.forEach((speed, i) => {
      expect(speed).toBeGreaterThan(speeds[i - 1] ?? lower);
    });
  });

  it('takes an entered angular stiffness for its estimate', () => {
    const supports = [
      { at: 0, angularStiffness: 10 * bending },
      { at: 1, angularStiffness: 10 * bending },
    ];
    const [first] = whirlBounds(uniformShaft(['free', 'free'], { ...slender, supports }), { count: 1 });
    const unit = beamUnit(shaftOf(slender));
    expect(Math.abs(first!.estimate / (springPinned(10) * unit) - 1)).toBeLessThan(1e-4);
    expect(Math.abs(first!.lower / (Math.PI ** 2 * unit) - 1)).toBeLessThan(1e-4);
  });

  it('refuses an amplitude of nothing', () => {
    expect(() => whirlBounds(uniformShaft(['pinned', 'pinned']), { amplitude: 0 })).toThrow(
      new RangeError('whirlBounds: amplitude must be a finite number greater than 0, got 0'),
    );
  });
});
