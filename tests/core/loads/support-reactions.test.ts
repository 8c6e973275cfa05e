import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { exampleLine, supportReactions, type ShaftLine } from '@sternline/core';
import { discOf, jointOf, lineOf, shaftOf, steel } from '../../support/lines.js';
import { usualLine } from '../../support/random-lines.js';

const GRAVITY = 9.80665;

interface ReferenceLine {
  readonly name: string;
  readonly torque: number;
  readonly joints: readonly number[];
  readonly shafts: readonly {
    readonly length: number;
    readonly outerDiameter: number;
    readonly elevation: number;
    readonly plan: number;
    readonly yokeTwist: number;
    readonly youngsModulus: number;
    readonly density: number;
    readonly supports: readonly number[];
    readonly discs: readonly (readonly [at: number, mass: number])[];
  }[];
  readonly weight: readonly number[];
  readonly steady: readonly number[];
  readonly second: readonly number[];
}

const references = JSON.parse(
  readFileSync(new URL('../../reference/loads/reactions.json', import.meta.url), 'utf8'),
) as readonly ReferenceLine[];

function lineOfReference({ shafts, joints }: ReferenceLine): ShaftLine {
  return lineOf(
    shafts.map(({ supports, discs, youngsModulus, density, ...rest }) =>
      shaftOf({
        ...rest,
        material: { ...steel, youngsModulus, density },
        supports: supports.map((at) => ({ at })),
        discs: discs.map(([at, mass]) => discOf({ at, mass })),
      }),
    ),
    joints.map((mass) => jointOf({ mass })),
  );
}

function within(actual: number, expected: number, relative: number): void {
  expect(Math.abs(actual / expected - 1), `${actual} against ${expected}`).toBeLessThanOrEqual(relative);
}

const quiet = { speed: 1e-3, torque: 0 };
const weightPerLength = (diameter: number) => steel.density * Math.PI * (diameter / 2) ** 2 * GRAVITY;

describe('supportReactions', () => {
  it.each(references)('agrees with vectors and dense beams in numpy: $name', (reference) => {
    const { supports } = supportReactions(lineOfReference(reference), {
      speed: 1e-3,
      torque: reference.torque,
    });
    supports.forEach(({ weight, steady, second, first }, i) => {
      within(weight, reference.weight[i]!, 1e-8);
      within(steady, reference.steady[i]!, 1e-8);
      within(second, reference.second[i]!, 1e-8);
      expect(first).toBeLessThan(1e-5);
    });
  });

  it.each([
    // Shares of wL, from the three-moment equation (any handbook of structures)
    [
      [0, 1],
      [1 / 2, 1 / 2],
    ],
    [
      [0, 0.5, 1],
      [3 / 16, 10 / 16, 3 / 16],
    ],
    [
      [0, 1 / 3, 2 / 3, 1],
      [4 / 30, 11 / 30, 11 / 30, 4 / 30],
    ],
  ])('under its own weight on supports at %o', (places, shares) => {
    const shaft = shaftOf({ length: 1, supports: places.map((at) => ({ at })) });
    const { supports } = supportReactions(lineOf([shaft]), quiet);
    shares.forEach((share, i) => {
      within(supports[i]!.steady, share * weightPerLength(0.005), 1e-9);
    });
  });

  it('on springs shares by stiffness: a stiff bar on a soft and a firm one', () => {
    // Two supports are determinate: half each whatever they are; a third in the middle, rigid bar: 1 : 1 : 1 at equal springs
    const held = [0, 0.5, 1].map((at) => ({ at, radialStiffness: 10 }));
    const { supports } = supportReactions(
      lineOf([shaftOf({ length: 1, outerDiameter: 0.05, supports: held })]),
      quiet,
    );
    supports.forEach(({ steady }) => {
      within(steady, weightPerLength(0.05) / 3, 1e-3);
    });
  });

  it('tilts on a bush with an angular stiffness', () => {
    // derived: pinned at both ends, with a spring k against the slope at one. Slope of the plain beam wL³/24EI, of an end moment M: ML/3EI; M = k(wL³/24EI − ML/3EI)
    const bending = (steel.youngsModulus * Math.PI * 0.005 ** 4) / 64;
    const weight = weightPerLength(0.005);
    for (const spring of [0, 1, 30, 1e3]) {
      const held = [{ at: 0, angularStiffness: spring }, { at: 1 }];
      const { supports } = supportReactions(lineOf([shaftOf({ length: 1, supports: held })]), quiet);
      const moment = (spring * weight) / (24 * bending) / (1 + spring / (3 * bending));
      within(supports[0]!.steady, weight / 2 + moment, 1e-9);
      within(supports[1]!.steady, weight / 2 - moment, 1e-9);
    }
  });

  it('is held by one bush alone where that resists tilting', () => {
    // statics: all of the weight, whatever the spring
    const held = [{ at: 0.5, angularStiffness: 1e3 }];
    const { supports } = supportReactions(lineOf([shaftOf({ length: 1, supports: held })]), quiet);
    within(supports[0]!.steady, weightPerLength(0.005), 1e-9);
  });

  it('of an unbalance grows with the square of the speed and levers over the overhang', () => {
    // statics: U Ω² (1 + a/l) at the near support, U Ω² a/l at the far one
    const shaft = shaftOf({
      length: 0.4,
      supports: [{ at: 0 }, { at: 0.3 }],
      discs: [discOf({ at: 0.36, mass: 0, unbalance: 3e-6 })],
    });
    for (const speed of [100, 200, 400]) {
      const { supports } = supportReactions(lineOf([shaft]), { speed, torque: 0 });
      within(supports[1]!.first, 3e-6 * speed ** 2 * 1.2, 1e-9);
      within(supports[0]!.first, 3e-6 * speed ** 2 * 0.2, 1e-9);
    }
  });

  it('takes a balance grade for what is not told', () => {
    // G16 at 314 rad/s of 0.05 kg: force m G Ω
    const shaft = shaftOf({
      length: 0.3,
      supports: [{ at: 0 }, { at: 0.3 }],
      discs: [discOf({ at: 0.3, mass: 0.05 })],
    });
    const force = (balanceGrade?: number) =>
      supportReactions(lineOf([shaft]), { speed: 314, torque: 0, ...(balanceGrade ? { balanceGrade } : {}) })
        .supports[1]!.first;
    within(force(), 0.05 * 0.016 * 314, 1e-9);
    within(force(40), 0.05 * 0.04 * 314, 1e-9);
  });

  it('of a bowed shaft: half its run-out in a half wave', () => {
    // ∫ ρA (r/2) sin(πx/L) dx Ω² = ρA L r Ω² / π, half at each end
    const shaft = shaftOf({ length: 0.3, runout: 0.0002, supports: [{ at: 0 }, { at: 0.3 }] });
    const { supports } = supportReactions(lineOf([shaft]), { speed: 500, torque: 0 });
    const mass = (weightPerLength(0.005) / GRAVITY) * 0.3;
    within(supports[0]!.first, (mass * 0.0002 * 500 ** 2) / (2 * Math.PI), 1e-9);
  });

  it('of a joint: T tan β / a on the bearings ahead', () => {
    // Cardan shaft catalogue (https://yumpu.com/en/document/view/51168356/cardan-shafts-for-industrial-applications-dana/48):
    // A₂ = B₂ = T tan β₁ / a; T 10 N·m, β 10°, a 0.1 m: 17.633 N. A pinned joint centre makes it the whole of it.
    const angle = Math.PI / 18;
    const line = lineOf([
      shaftOf({ length: 0.13, outerDiameter: 0.02, supports: [{ at: 0 }, { at: 0.1 }] }),
      shaftOf({ length: 0.2, outerDiameter: 0.02, elevation: angle, supports: [{ at: 0 }, { at: 0.2 }] }),
    ]);
    const far = supportReactions(line, { speed: 1, torque: 10 }).supports[3]!;
    const weight = supportReactions(line, { speed: 1, torque: 0 }).supports[3]!;
    // on the driven shaft between pins: mean T sin β / 2l, and order 2 of T tan β / 2l
    within(far.second, (10 * Math.tan(angle)) / 2 / 0.2, 1e-9);
    expect(far.steady).not.toBe(weight.steady);
    const determinate = lineOf([
      shaftOf({ length: 0.13, outerDiameter: 0.02, supports: [{ at: 0 }, { at: 0.1 }] }),
      shaftOf({ length: 100, outerDiameter: 0.02, elevation: angle, supports: [{ at: 100 }] }),
    ]);
    const near = supportReactions(determinate, { speed: 1, torque: 10 }).supports[0]!;
    // the driven couple over 100 m hands on nothing to speak of
    within(2 * near.second, 17.633, 2e-3);
  });

  it('bears the whole weight of a level line', () => {
    fc.assert(
      fc.property(usualLine, (line) => {
        const { supports } = supportReactions(line, quiet);
        const shafts = line.shafts.reduce(
          (sum, { length, outerDiameter, innerDiameter }) =>
            sum + steel.density * (Math.PI / 4) * (outerDiameter ** 2 - innerDiameter ** 2) * length,
          0,
        );
        const discs = line.shafts.flatMap((shaft) => shaft.discs).reduce((sum, { mass }) => sum + mass, 0);
        const joints = line.joints.reduce((sum, { mass }) => sum + mass, 0);
        const whole = (shafts + discs + joints) * GRAVITY;
        // magnitudes, so that a support that holds down counts as well: no less than the weight
        const clamped = line.shafts.some((shaft) => shaft.supports.some(({ fixesSlope }) => fixesSlope));
        const sum = supports.reduce((total, { weight }) => total + weight, 0);
        expect(sum).toBeGreaterThanOrEqual(whole * (1 - (clamped ? 1e-5 : 1e-6)));
      }),
      { numRuns: 60 },
    );
  });

  it('is linear in the torque', () => {
    const at = (torque: number) => supportReactions(exampleLine(), { speed: 345, torque }).supports;
    at(0.4).forEach(({ second }, i) => {
      within(second, 2 * at(0.2)[i]!.second, 1e-12);
      expect(at(0)[i]!.second).toBe(0);
    });
  });

  it('bends a shaft as statics have it', () => {
    // overhung disc: U Ω² a turns with the shaft, its weight m g a alternates
    const shaft = shaftOf({
      length: 0.36,
      material: { ...steel, density: 1e-6 },
      supports: [{ at: 0 }, { at: 0.3 }],
      discs: [discOf({ at: 0.36, mass: 0.05, unbalance: 4e-6 })],
    });
    const { bending } = supportReactions(lineOf([shaft]), { speed: 300, torque: 0 });
    within(bending[0]!.alternating, 0.05 * GRAVITY * 0.06, 1e-6);
    within(bending[0]!.steady, 4e-6 * 300 ** 2 * 0.06, 1e-6);
  });

  it('turns down a mechanism, and what is out of its domain', () => {
    const free = lineOf([shaftOf({ name: 'loose', supports: [{ at: 0.5 }] })]);
    expect(() => supportReactions(free, { speed: 1, torque: 0 })).toThrow(
      /^supportReactions: line must be held sideways throughout \(shaft "loose" is free to .*\), got an object$/,
    );
    expect(() => supportReactions(exampleLine(), { speed: 0, torque: 0 })).toThrow(
      'supportReactions: speed must be a finite number greater than 0, got 0',
    );
    expect(() => supportReactions(exampleLine(), { speed: 1, torque: NaN })).toThrow(
      'supportReactions: torque must be a finite number, got NaN',
    );
  });
});
