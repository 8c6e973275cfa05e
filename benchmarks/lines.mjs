import { parseShaftLine } from '../packages/core/dist/index.js';

/** Motor stub, two intermediate shafts and a propeller shaft: three universal joints, five supports. Invented. */
export function threeJoints() {
  return parseShaftLine({
    name: 'three joints, five supports',
    shafts: [
      {
        name: 'motor shaft',
        length: 0.06,
        outerDiameter: 0.005,
        material: 'carbon steel',
        supports: [{ at: 0.006 }, { at: 0.045 }],
      },
      { name: 'first', length: 0.12, outerDiameter: 0.006, material: 'stainless steel', elevation: -0.1 },
      {
        name: 'second',
        length: 0.2,
        outerDiameter: 0.006,
        material: 'stainless steel',
        elevation: -0.2,
        supports: [{ at: 0.1 }],
      },
      {
        name: 'propeller shaft',
        length: 0.36,
        outerDiameter: 0.005,
        material: 'stainless steel',
        elevation: -0.3,
        supports: [{ at: 0.02 }, { at: 0.32 }],
        discs: [{ name: 'propeller', at: 0.35, mass: 0.038, polarInertia: 4.4e-6, diametralInertia: 2.4e-6 }],
      },
    ],
    joints: [
      { kind: 'universal', mass: 0.012 },
      { kind: 'universal', mass: 0.012 },
      { kind: 'universal', mass: 0.016 },
    ],
    propeller: { blades: 4, diameter: 0.048, pitch: 0.05 },
  });
}
