import { readFileSync } from 'node:fs';
import { jointOf, lineOf, shaftOf } from '../../support/lines.js';
import type { Material, ShaftLine } from '@sternline/core';

interface ReferenceShaft {
  readonly length: number;
  readonly outerDiameter: number;
  readonly innerDiameter: number;
  readonly discs: readonly (readonly [at: number, inertia: number])[];
  readonly shearModulus: number;
  readonly density: number;
}

/** A line of tests/reference/twist/chains.py with its answers. */
export interface ReferenceChain {
  readonly name: string;
  readonly shafts: readonly ReferenceShaft[];
  readonly joints: readonly {
    readonly stiffness: number | null;
    readonly inertia: number;
    readonly gap: readonly [number, number];
  }[];
  readonly rotor: number;
  readonly frequency: number;
  readonly damping: number;
  readonly frequencies: readonly number[];
  readonly jointTorque?: readonly number[];
  readonly rotorAngle?: number;
  readonly endAngle?: number;
}

export const referenceChains = JSON.parse(
  readFileSync(new URL('../../reference/twist/chains.json', import.meta.url), 'utf8'),
) as readonly ReferenceChain[];

/** The line of a reference, bent so that each joint's order 2 is the gap that was prescribed there. */
export function lineOfChain(chain: ReferenceChain): ShaftLine {
  let elevation = 0;
  const gaps = chain.joints.map(({ gap: [real, imaginary] }) => ({
    size: Math.hypot(real, imaginary),
    phase: Math.atan2(imaginary, real),
  }));
  const shafts = chain.shafts.map(({ shearModulus, density, discs, ...sizes }, i) => {
    const before = gaps[i - 1];
    if (before) elevation += 2 * Math.atan(Math.sqrt(before.size));
    const next = gaps[i];
    // planar joints alternate in sign: gap₂/gap₁ = −(k₂/k₁) exp 2i·twist
    const yokeTwist = before && next ? (next.phase - before.phase - Math.PI) / 2 : 0;
    const material: Material = {
      name: 'reference',
      youngsModulus: 2.6 * shearModulus,
      shearModulus,
      density,
      yieldStrength: 2e8,
    };
    return shaftOf({
      ...sizes,
      material,
      elevation,
      yokeTwist,
      discs: discs.map(([at, polarInertia]) => ({
        name: 'disc',
        at,
        mass: 0,
        polarInertia,
        diametralInertia: polarInertia,
      })),
    });
  });
  const joints = chain.joints.map(({ stiffness, inertia }) =>
    jointOf({
      polarInertia: inertia,
      ...(stiffness === null ? {} : { torsionalStiffness: stiffness }),
    }),
  );
  const motor = { speedConstant: 50, resistance: 0.1, noLoadCurrent: 1, rotorInertia: chain.rotor };
  return { ...lineOf(shafts, joints), motor };
}

/** A motor that only turns: its rotor's inertia in kg·m². */
export function rotor(rotorInertia: number) {
  return { speedConstant: 50, resistance: 0.1, noLoadCurrent: 1, rotorInertia };
}
