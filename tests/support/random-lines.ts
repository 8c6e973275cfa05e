import fc from 'fast-check';
import type { Disc, Joint, Shaft, ShaftLine, Support } from '@sternline/core';
import { lineOf, shaftOf, steel } from './lines.js';

/** Uniform in the logarithm, so that small sizes come as often as large ones. */
function logarithmic(from: number, to: number): fc.Arbitrary<number> {
  return fc
    .double({ min: Math.log(from), max: Math.log(to), noNaN: true })
    .map((exponent) => Math.min(to, Math.max(from, Math.exp(exponent))));
}

const share = fc.double({ min: 0, max: 1, noNaN: true });

/** A support before its place is scaled to the shaft: `at` is a share of the length. */
const supportArbitrary: fc.Arbitrary<Support> = fc.record(
  { at: share, radialStiffness: logarithmic(1e3, 1e8), fixesSlope: fc.boolean() },
  { requiredKeys: ['at'] },
);

/** Sizes over the shaft diameter, and mass over that of a steel cube as wide as the shaft, until they meet their shaft. */
const discArbitrary = fc.record({ at: share, mass: logarithmic(0.1, 1e3), radius: logarithmic(0.6, 10) });

/** Two supports well apart: enough to hold a shaft by itself. */
const holdingArbitrary: fc.Arbitrary<Support[]> = fc
  .tuple(supportArbitrary, supportArbitrary)
  .map(([first, second]) => [
    { ...first, at: first.at * 0.4 },
    { ...second, at: 1 - second.at * 0.4 },
  ]);

interface Range {
  /** m, of the thinnest shaft of the line. */
  readonly diameter: readonly [number, number];
  /** m */
  readonly length: readonly [number, number];
  /** Thickest shaft over thinnest, at most. */
  readonly step: number;
  readonly joints: number;
}

interface Sizes extends Range {
  readonly thinnest: number;
  readonly held: boolean;
}

function shaftArbitrary({ length: lengths, diameter, step, thinnest, held }: Sizes): fc.Arbitrary<Shaft> {
  return fc
    .record({
      length: logarithmic(...lengths),
      thickness: logarithmic(1, step),
      bore: fc.oneof(fc.constant(0), fc.double({ min: 0.1, max: 0.9, noNaN: true })),
      supports: held ? holdingArbitrary : fc.constant<Support[]>([]),
      discs: fc.array(discArbitrary, { maxLength: 2 }),
    })
    .map(({ length, thickness, bore, supports, discs }) => {
      const outerDiameter = Math.min(thinnest * thickness, diameter[1]);
      return shaftOf({
        length,
        outerDiameter,
        innerDiameter: bore * outerDiameter,
        material: steel,
        supports: supports.map((support) => ({ ...support, at: support.at * length })),
        discs: discs.map((disc) => thinDisc(disc, { length, outerDiameter })),
      });
    });
}

interface Proportions {
  readonly at: number;
  readonly mass: number;
  readonly radius: number;
}

function thinDisc(
  { at, mass, radius }: Proportions,
  shaft: { readonly length: number; readonly outerDiameter: number },
): Disc {
  const kilograms = mass * steel.density * shaft.outerDiameter ** 3;
  const diametralInertia = (kilograms * (radius * shaft.outerDiameter) ** 2) / 4;
  return {
    name: 'disc',
    at: at * shaft.length,
    mass: kilograms,
    polarInertia: 2 * diametralInertia,
    diametralInertia,
  };
}

const jointArbitrary: fc.Arbitrary<Joint> = fc.record(
  {
    kind: fc.constantFrom('universal', 'universal', 'rigid', 'flexible'),
    mass: fc.oneof(fc.constant(0), logarithmic(1e-3, 0.5)),
    polarInertia: fc.constant(0),
    bendingStiffness: logarithmic(0.1, 1e3),
  },
  { requiredKeys: ['kind', 'mass', 'polarInertia'] },
);

/** Lines of a builder's sizes: up to four joints, shafts of 2 to 12 mm. */
export const usualLine = lineArbitrary({ diameter: [2e-3, 12e-3], length: [0.03, 0.6], step: 3, joints: 4 });

/** The widest lines that are legal: up to eight joints, shafts of 0.5 to 60 mm with steps of ten to one. */
export const extremeLine = lineArbitrary({
  diameter: [0.5e-3, 60e-3],
  length: [0.01, 2],
  step: 10,
  joints: 8,
});

/** Held lines only: an inner shaft without supports lies between shafts that hold themselves. */
function lineArbitrary(range: Range): fc.Arbitrary<ShaftLine> {
  return fc
    .tuple(
      logarithmic(...range.diameter),
      fc.array(fc.boolean(), { minLength: 1, maxLength: range.joints + 1 }),
    )
    .chain(([thinnest, wishes]) => {
      const last = wishes.length - 1;
      const held = wishes.reduce<boolean[]>((done, wish, i) => {
        const free = !wish && i > 0 && i < last && done[i - 1] === true;
        return [...done, !free];
      }, []);
      return fc.tuple(
        fc.tuple(...held.map((own) => shaftArbitrary({ ...range, thinnest, held: own }))),
        fc.array(jointArbitrary, { minLength: last, maxLength: last }),
      );
    })
    .map(([shafts, joints]) => lineOf(shafts, joints));
}
