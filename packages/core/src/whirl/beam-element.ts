import type { Section } from './section.js';

/** Sixteen entries, row by row. */
export type ElementMatrix = readonly number[];

/** Matrices of one beam element for (displacement, slope) at its motor end, then at its propeller end. */
export interface BeamElement {
  readonly stiffness: ElementMatrix;
  /** Mass and diametral inertia. */
  readonly mass: ElementMatrix;
  /** Polar inertia, to be multiplied by the shaft speed. */
  readonly gyroscopic: ElementMatrix;
}

/**
 * Two-node Timoshenko beam with consistent mass, rotary inertia and gyroscopic matrix.
 *
 * Its shape functions are the exact static ones for loads at its ends, with φ = 12 EI / (κGA h²) the ratio of shear to
 * bending flexibility. A round section has twice its diametral inertia about the axis, so the gyroscopic matrix is twice
 * the rotary one.
 *
 * @param section - of the shaft
 * @param length - h, in m
 * @see J. S. Przemieniecki, "Theory of Matrix Structural Analysis", 1968, §5.6 and §11.6; Z. Friedman and J. B. Kosmatka,
 *   "An improved two-node Timoshenko beam finite element", Computers & Structures 47(3), 1993, 473–481 (from memory;
 *   the tests check them against quadrature of the shape functions)
 */
export function beamElement(section: Section, length: number): BeamElement {
  const shear = (12 * section.bendingStiffness) / (section.shearStiffness * length ** 2);
  const whole = 1 + shear;
  const translation = matrix(
    (section.massPerLength * length) / whole ** 2,
    translationEntries(shear, length),
  );
  const rotation = matrix(section.inertiaPerLength / (whole ** 2 * length), rotationEntries(shear, length));
  return {
    stiffness: matrix(section.bendingStiffness / (whole * length ** 3), stiffnessEntries(shear, length)),
    mass: sum(translation, rotation),
    gyroscopic: sum(rotation, rotation),
  };
}

/**
 * Entries 11, 12, 13, 14, 22 and 24. A uniform element looks the same from either end, which gives the others:
 * 33 = 11, 44 = 22, 34 = −12, 23 = −14.
 */
type Distinct = readonly [number, number, number, number, number, number];

function stiffnessEntries(shear: number, h: number): Distinct {
  return [12, 6 * h, -12, 6 * h, (4 + shear) * h * h, (2 - shear) * h * h];
}

function translationEntries(shear: number, h: number): Distinct {
  const square = shear * shear;
  return [
    13 / 35 + (7 / 10) * shear + square / 3,
    (11 / 210 + (11 / 120) * shear + square / 24) * h,
    9 / 70 + (3 / 10) * shear + square / 6,
    -(13 / 420 + (3 / 40) * shear + square / 24) * h,
    (1 / 105 + shear / 60 + square / 120) * h * h,
    -(1 / 140 + shear / 60 + square / 120) * h * h,
  ];
}

function rotationEntries(shear: number, h: number): Distinct {
  const square = shear * shear;
  const couple = (1 / 10 - shear / 2) * h;
  return [
    6 / 5,
    couple,
    -6 / 5,
    couple,
    (2 / 15 + shear / 6 + square / 3) * h * h,
    (-1 / 30 - shear / 6 + square / 6) * h * h,
  ];
}

function matrix(scale: number, [a, b, c, d, e, f]: Distinct): ElementMatrix {
  return [a, b, c, d, b, e, -d, f, c, -d, a, -b, d, f, -b, e].map((entry) => scale * entry);
}

function sum(first: ElementMatrix, second: ElementMatrix): ElementMatrix {
  return first.map((entry, i) => entry + (second[i] ?? 0));
}
