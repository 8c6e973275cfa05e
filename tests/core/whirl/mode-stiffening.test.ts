import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { criticalSpeeds, modeStiffening, type ModeStiffening, type ShaftLine } from '@sternline/core';
import { discOf, jointOf, lineOf, shaftOf, steel, uniformShaft } from '../../support/lines.js';
import { usualLine } from '../../support/random-lines.js';

const line = lineOf(
  [
    shaftOf({ length: 0.05, supports: [{ at: 0.005 }, { at: 0.04, radialStiffness: 3e5 }] }),
    shaftOf({ length: 0.12, outerDiameter: 0.006, innerDiameter: 0.004 }),
    shaftOf({
      length: 0.3,
      supports: [{ at: 0.02, radialStiffness: 4e5, angularStiffness: 20 }, { at: 0.26 }],
      discs: [
        discOf({ at: 0.1, mass: 0.03 }),
        discOf({ at: 0.3, mass: 0.06, diametralInertia: 8e-6, polarInertia: 1.6e-5 }),
      ],
    }),
  ],
  [jointOf({ mass: 0.02 }), jointOf({ kind: 'flexible', bendingStiffness: 4, mass: 0.015 })],
);

const STEP = 1e-3;

/** Relative change of a speed with the relative step ±10⁻³ of something in the line, by central differences. */
function slopeOf(
  change: (line: ShaftLine, factor: number) => ShaftLine,
  { mode, whirl, order }: { mode: number; whirl: 'forward' | 'backward'; order: number },
): number {
  const speed = (factor: number): number =>
    criticalSpeeds(change(line, factor), { whirl, order, count: 4 })[mode - 1]!.speed;
  return Math.log(speed(1 + STEP) / speed(1 - STEP)) / (2 * STEP);
}

function withShaft(
  own: ShaftLine,
  shaft: number,
  parts: (old: ShaftLine['shafts'][number]) => object,
): ShaftLine {
  return { ...own, shafts: own.shafts.map((one, i) => (i === shaft ? { ...one, ...parts(one) } : one)) };
}

describe('modeStiffening', () => {
  const modes = [
    { mode: 1, whirl: 'forward', order: 1 },
    { mode: 2, whirl: 'forward', order: 1 },
    { mode: 3, whirl: 'backward', order: 2 },
  ] as const;

  describe.each(modes)('of mode %o tells what a small change does, as finite differences do', (which) => {
    const shares = modeStiffening(line, which);
    const agrees = (share: number, change: (own: ShaftLine, factor: number) => ShaftLine): void => {
      // differences carry the mesh's 1e-4 of 1e-3, were it to change, and the step's own square
      expect(slopeOf(change, which)).toBeCloseTo(share, 3);
    };

    it('to a shaft', () => {
      for (const shaft of [0, 1, 2]) {
        const { strain, kinetic } = shares.shafts[shaft]!;
        agrees(strain / 2, (own, factor) =>
          withShaft(own, shaft, ({ material }) => ({
            material: {
              ...material,
              youngsModulus: material.youngsModulus * factor,
              shearModulus: material.shearModulus * factor,
            },
          })),
        );
        agrees(-kinetic / 2, (own, factor) =>
          withShaft(own, shaft, ({ material }) => ({
            material: { ...material, density: material.density * factor },
          })),
        );
      }
    });

    it('to a disc and a joint', () => {
      shares.discs.forEach(({ shaft, disc, kinetic, mass }) => {
        const scaled = (keys: readonly string[]) => (own: ShaftLine, factor: number) =>
          withShaft(own, shaft, ({ discs }) => ({
            discs: discs.map((one, i) =>
              i === disc
                ? Object.fromEntries(
                    Object.entries(one).map(([key, value]) => [
                      key,
                      keys.includes(key) ? (value as number) * factor : value,
                    ]),
                  )
                : one,
            ),
          }));
        agrees(-kinetic / 2, scaled(['mass', 'diametralInertia', 'polarInertia']));
        agrees(-mass / 2, scaled(['mass']));
      });
      shares.joints.forEach(({ joint, strain, kinetic }) => {
        const scaled = (key: 'mass' | 'bendingStiffness') => (own: ShaftLine, factor: number) => ({
          ...own,
          joints: own.joints.map((one, i) =>
            i === joint ? { ...one, [key]: (one[key] ?? 0) * factor } : one,
          ),
        });
        agrees(-kinetic / 2, scaled('mass'));
        agrees(strain / 2, scaled('bendingStiffness'));
      });
    });

    it('to a support', () => {
      shares.supports.forEach(({ shaft, support, strain }) => {
        agrees(strain / 2, (own, factor) =>
          withShaft(own, shaft, ({ supports }) => ({
            supports: supports.map((one, i) =>
              i === support
                ? {
                    ...one,
                    ...(one.radialStiffness ? { radialStiffness: one.radialStiffness * factor } : {}),
                    ...(one.angularStiffness ? { angularStiffness: one.angularStiffness * factor } : {}),
                  }
                : one,
            ),
          })),
        );
      });
    });

    it('to how a support holds the slope', () => {
      shares.supports.forEach(({ shaft, support, slopeGain }) => {
        const speed = (more: number): number =>
          criticalSpeeds(
            withShaft(line, shaft, ({ supports }) => ({
              supports: supports.map((one, i) =>
                i === support ? { ...one, angularStiffness: (one.angularStiffness ?? 0) + more } : one,
              ),
            })),
            { ...which, count: 4 },
          )[which.mode - 1]!.speed;
        const step = Math.min(1e-3 / (slopeGain + 1e-9), 0.1);
        expect(Math.log(speed(step) / speed(0)) / step / slopeGain).toBeCloseTo(1, 1);
      });
    });
  });

  it('shares out the whole of either energy', () => {
    fc.assert(
      fc.property(usualLine, fc.constantFrom(1, 2, 3, 4), fc.constantFrom(1, 2), (own, mode, order) => {
        const { shafts, supports, joints, discs }: ModeStiffening = modeStiffening(own, {
          mode,
          order,
          whirl: 'backward',
        });
        const sum = (...lists: (readonly { strain?: number; kinetic?: number }[])[]) => ({
          strain: lists.flat().reduce((total, { strain = 0 }) => total + strain, 0),
          kinetic: lists.flat().reduce((total, { kinetic = 0 }) => total + kinetic, 0),
        });
        const whole = sum(shafts, supports, joints, discs);
        expect(whole.strain).toBeCloseTo(1, 6);
        expect(whole.kinetic).toBeCloseTo(1, 6);
        shafts.forEach(({ strain, kinetic, segments }) => {
          expect(sum(segments).strain).toBeCloseTo(strain, 12);
          expect(sum(segments).kinetic).toBeCloseTo(kinetic, 12);
        });
      }),
      { numRuns: 40, seed: 1 },
    );
  });

  it('of a half sine: strain and motion both go with its square', () => {
    const { shafts } = modeStiffening(
      uniformShaft(['pinned', 'pinned'], { outerDiameter: 0.001, material: steel }),
    );
    shafts[0]!.segments.forEach(({ from, to, strain, kinetic }) => {
      // ∫ 2 sin² πx dx
      const share = to - from - (Math.sin(2 * Math.PI * to) - Math.sin(2 * Math.PI * from)) / (2 * Math.PI);
      expect(kinetic).toBeCloseTo(share, 4);
      expect(strain).toBeCloseTo(share, 3);
    });
  });

  it('refuses a mode that is none', () => {
    expect(() => modeStiffening(line, { mode: 0 })).toThrow(
      new RangeError('modeStiffening: mode must be a whole number from 1 to 100, got 0'),
    );
  });
});
