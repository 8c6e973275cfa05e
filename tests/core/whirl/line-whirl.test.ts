import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { criticalSpeeds, lineWhirl, MechanismError, type CriticalSpeedOptions } from '@sternline/core';
import { discOf, lineOf, shaftOf, uniformShaft } from '../../support/lines.js';
import { extremeLine, usualLine } from '../../support/random-lines.js';

const EXCITATIONS: readonly Required<CriticalSpeedOptions>[] = [
  { order: 1, whirl: 'forward', count: 4 },
  { order: 2, whirl: 'backward', count: 4 },
  { order: 2, whirl: 'forward', count: 2 },
  { order: 3, whirl: 'backward', count: 4 },
  { order: 3, whirl: 'forward', count: 6 },
  { order: 1, whirl: 'backward', count: 4 },
];

describe('lineWhirl', () => {
  // a stiff shaft on soft bushes loses eps · EI/h³ over the bush's stiffness of its digits, whichever way it is solved
  it.each([
    ['usual', usualLine, 1e-7],
    ['extreme', extremeLine, 1e-6],
  ] as const)(
    'gives for each excitation what criticalSpeeds gives for it alone, on %s lines',
    (_, lines, digits) => {
      fc.assert(
        fc.property(lines, (line) => {
          lineWhirl(line, EXCITATIONS).forEach(({ order, whirl, modes }, i) => {
            const alone = criticalSpeeds(line, EXCITATIONS[i]);
            expect([order, whirl]).toEqual([EXCITATIONS[i]!.order, EXCITATIONS[i]!.whirl]);
            expect(modes).toHaveLength(alone.length);
            modes.forEach(({ speed }, mode) => {
              expect(Math.abs(speed / alone[mode]!.speed - 1)).toBeLessThan(digits);
            });
          });
        }),
        { numRuns: 100, seed: 1 },
      );
    },
  );

  it('wherever the excitation stands in the list', () => {
    const line = lineOf([
      shaftOf({
        length: 0.3,
        supports: [{ at: 0 }, { at: 0.25 }],
        discs: [discOf({ at: 0.3, mass: 0.3, diametralInertia: 4e-4, polarInertia: 8e-4 })],
      }),
    ]);
    const reversed = lineWhirl(line, [...EXCITATIONS].reverse()).reverse();
    lineWhirl(line, EXCITATIONS).forEach(({ modes }, i) => {
      modes.forEach(({ speed }, mode) => {
        expect(Math.abs(speed / reversed[i]!.modes[mode]!.speed - 1)).toBeLessThan(1e-9);
      });
    });
  });

  it('does not hang on the count, up to four', () => {
    fc.assert(
      fc.property(usualLine, fc.constantFrom(1, 2), (line, order) => {
        const four = criticalSpeeds(line, { order, count: 4 });
        for (const count of [1, 2, 3]) {
          criticalSpeeds(line, { order, count }).forEach(({ speed }, mode) => {
            expect(Math.abs(speed / four[mode]!.speed - 1)).toBeLessThan(1e-12);
          });
        }
      }),
      { numRuns: 60, seed: 2 },
    );
  });

  it('keeps the digits of a stout shaft beside a hair with a heavy disc', () => {
    // behind a hinge on a rigid support the two shafts are strangers: law, each has the speeds it has alone
    const hair = shaftOf({
      length: 0.2,
      outerDiameter: 0.0005,
      supports: [{ at: 0 }, { at: 0.2 }],
      discs: [discOf({ at: 0.1, mass: 2e4 })],
    });
    const stout = shaftOf({ length: 0.2, outerDiameter: 0.06, supports: [{ at: 0.2 }] });
    const alone = criticalSpeeds(lineOf([{ ...stout, supports: [{ at: 0 }, { at: 0.2 }] }]), { count: 1 });
    const thin = criticalSpeeds(lineOf([hair]), { count: 4 });
    const both = criticalSpeeds(lineOf([hair, stout]), { count: 16 });
    expect(alone[0]!.speed / thin[0]!.speed).toBeGreaterThan(1e6);
    const nearest = both.reduce(
      (best, { speed }) => Math.min(best, Math.abs(speed / alone[0]!.speed - 1)),
      Infinity,
    );
    // meshes of their own, each within 1e-4
    expect(nearest).toBeLessThan(1e-4);
    thin.forEach(({ speed }, mode) => {
      expect(Math.abs(both[mode]!.speed / speed - 1)).toBeLessThan(1e-4);
    });
  });

  it('refuses by the place in the list, and a mechanism by its shaft', () => {
    const line = uniformShaft(['pinned', 'pinned']);
    expect(() => lineWhirl(line, [{}, { order: -1 }])).toThrow(
      new RangeError('lineWhirl: excitations[1].order must be a finite number greater than 0, got -1'),
    );
    expect(() => lineWhirl(lineOf([shaftOf()]), [{}])).toThrow(MechanismError);
  });
});
