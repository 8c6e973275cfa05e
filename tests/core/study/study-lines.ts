import { exampleLine, parseShaftLine, yokePhase, type Shaft, type ShaftLine } from '@sternline/core';

/* Invented lines for the tests of advice: the Marram's and nine others, at speeds where each is in some trouble or none. */

const DEGREE = Math.PI / 180;
export const RPM = Math.PI / 30;

export interface StudyCase {
  readonly title: string;
  readonly line: ShaftLine;
  readonly speed: number;
}

/** The example line with its last shaft changed. */
export function withLastShaft(
  change: (shaft: Shaft) => Partial<Shaft>,
  rest: Partial<ShaftLine> = {},
): ShaftLine {
  const line = exampleLine();
  return parseShaftLine({
    ...line,
    ...rest,
    shafts: line.shafts.map((shaft, i) =>
      i === line.shafts.length - 1 ? { ...shaft, ...change(shaft) } : shaft,
    ),
  });
}

/** The example line with its bend shared by two joints, the yokes of the shaft between `off` from their best. */
export function twoJoints(off = 0): ShaftLine {
  const line = exampleLine();
  const [motor, propeller] = line.shafts as readonly [Shaft, Shaft];
  const [joint] = line.joints;
  const between = {
    name: 'intermediate shaft',
    length: 0.04,
    outerDiameter: 0.005,
    material: propeller.material,
    elevation: propeller.elevation / 2,
  };
  const bare = parseShaftLine({ ...line, shafts: [motor, between, propeller], joints: [joint, joint] });
  const best = yokePhase(bare).shafts[0]!.best;
  const shafts = bare.shafts.map((shaft, i) => (i === 1 ? { ...shaft, yokeTwist: best + off } : shaft));
  return parseShaftLine({ ...bare, shafts });
}

/** Sizes of shaft, bush and tube together. */
export function sized(diameter: number): (shaft: Shaft) => Partial<Shaft> {
  return ({ supports }) => ({
    outerDiameter: diameter,
    tubeBore: diameter + 0.002,
    supports: supports.map((support) => ({ ...support, bore: diameter + 0.00003 })),
  });
}

const LOOSE = { kind: 'set-screw', size: 0.002, count: 1, seatingTorque: 0.02 } as const;

export const STUDY_CASES: readonly StudyCase[] = [
  { title: 'as built', line: exampleLine(), speed: 3300 * RPM },
  { title: 'as built, slow', line: exampleLine(), speed: 1850 * RPM },
  { title: 'as built, fast', line: exampleLine(), speed: 6500 * RPM },
  { title: 'six millimetres', line: withLastShaft(sized(0.006)), speed: 3300 * RPM },
  { title: 'four millimetres', line: withLastShaft(sized(0.004)), speed: 3000 * RPM },
  { title: 'two joints', line: twoJoints(), speed: 3300 * RPM },
  { title: 'two joints out of phase', line: twoJoints(40 * DEGREE), speed: 2100 * RPM },
  {
    title: 'loose screws',
    line: withLastShaft(sized(0.006), {
      joints: [{ ...exampleLine().joints[0]!, fastener: LOOSE }],
    }),
    speed: 3300 * RPM,
  },
  {
    title: 'short overhang',
    line: withLastShaft(({ discs }) => ({
      length: 0.362,
      discs: discs.map((disc) => ({ ...disc, at: 0.35 })),
    })),
    speed: 3300 * RPM,
  },
  {
    title: 'three blades, brass shaft',
    line: withLastShaft(
      () => ({
        material: parseShaftLine({ shafts: [{ ...exampleLine().shafts[1]!, material: 'brass' }] }).shafts[0]!
          .material,
      }),
      {
        propeller: { ...exampleLine().propeller!, blades: 3 },
      },
    ),
    speed: 2600 * RPM,
  },
];
