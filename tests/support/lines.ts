import type { Disc, Joint, Material, Shaft, ShaftLine, Support } from '@sternline/core';

/** Round figures for steel, enough for comparisons with formulas. */
export const steel: Material = {
  name: 'steel',
  youngsModulus: 207e9,
  shearModulus: 79.6e9,
  density: 7850,
  yieldStrength: 250e6,
};

/** Steel that weighs next to nothing, for the textbook cases of a disc on a massless shaft. */
export const weightlessSteel: Material = { ...steel, name: 'weightless steel', density: 1e-6 };

/** How an end or an inner station is held. */
export type Hold = 'free' | 'pinned' | 'fixed';

export function hold(kind: Hold, at: number): Support[] {
  if (kind === 'free') return [];
  return kind === 'pinned' ? [{ at }] : [{ at, fixesSlope: true }];
}

/** One shaft, solid steel and bare unless told otherwise. */
export function shaftOf(parts: Partial<Shaft> = {}): Shaft {
  return {
    name: 'shaft',
    length: 1,
    outerDiameter: 0.005,
    innerDiameter: 0,
    material: steel,
    elevation: 0,
    plan: 0,
    yokeTwist: 0,
    supports: [],
    discs: [],
    ...parts,
  };
}

/** A line of one shaft held at its ends: 1 m of 5 mm steel, so slender that shear does not show. */
export function uniformShaft(
  ends: readonly [Hold, Hold],
  { supports = [], ...parts }: Partial<Shaft> = {},
): ShaftLine {
  const length = parts.length ?? 1;
  const held = [...hold(ends[0], 0), ...supports, ...hold(ends[1], length)];
  return lineOf([shaftOf({ ...parts, length, supports: held })]);
}

export function discOf(parts: Partial<Disc> = {}): Disc {
  return { name: 'disc', at: 0, mass: 0.1, polarInertia: 0, diametralInertia: 0, ...parts };
}

export function jointOf(parts: Partial<Joint> = {}): Joint {
  return { kind: 'universal', mass: 0, polarInertia: 0, ...parts };
}

/** A line of these shafts; every joint is a massless universal joint unless given. */
export function lineOf(
  shafts: readonly Shaft[],
  joints: readonly Joint[] = shafts.slice(1).map(() => jointOf()),
): ShaftLine {
  return { name: 'test line', shafts, joints };
}

/** Frequency parameter √(EI / ρA L⁴) of a bare shaft, in rad/s: what a handbook's λ² multiplies. */
export function beamUnit(shaft: Shaft, length = shaft.length): number {
  const { outerDiameter, innerDiameter, material } = shaft;
  const radiusOfGyration = Math.sqrt(outerDiameter ** 2 + innerDiameter ** 2) / 4;
  return (Math.sqrt(material.youngsModulus / material.density) * radiusOfGyration) / length ** 2;
}

/**
 * The same line with each shaft a hundredth as thick, of a material that keeps its EI and its mass per metre: shear and
 * rotary inertia, which go with the square of the thickness, are gone and the textbook beam is left.
 */
export function withoutShear(line: ShaftLine): ShaftLine {
  const shafts = line.shafts.map((shaft) => ({
    ...shaft,
    outerDiameter: shaft.outerDiameter / 100,
    innerDiameter: shaft.innerDiameter / 100,
    material: {
      ...shaft.material,
      youngsModulus: shaft.material.youngsModulus * 1e8,
      shearModulus: shaft.material.shearModulus * 1e8,
      density: shaft.material.density * 1e4,
    },
  }));
  return { ...line, shafts };
}
