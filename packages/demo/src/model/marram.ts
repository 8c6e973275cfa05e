import {
  exampleLine,
  parseShaftLine,
  simulateTrial,
  type Shaft,
  type SimulationOptions,
  type ShaftLine,
} from '@sternline/core';
import type { LineMeasures, MeasuredPoints, PointKey } from './measures.js';
import type { ProjectLine, Trial } from './project.js';

/*
 * The invented ferry Marram, 1:40, 1.42 m, twin screw: the port line as first built, and four ways to change it.
 * Nothing here was measured; the trials are simulated from the line itself with stated seeds.
 */

const DEGREE = Math.PI / 180;
const RPM = Math.PI / 30;

/** rad/s: 3 300 rpm, at which the ferry reaches her scale speed. */
export const MARRAM_SPEED = 3300 * RPM;

/** The lines of the sample project, the one as first built in front. */
export function marramLines(): ProjectLine[] {
  const built = exampleLine();
  return [
    { id: 'marram-as-built', line: built, measures: marramMeasures() },
    { id: 'marram-two-joints', line: withTwoJoints(built) },
    { id: 'marram-six', line: withSixMillimetres(built) },
    { id: 'marram-middle-bush', line: withMiddleBush(built) },
    { id: 'marram-short-overhang', line: withLessOverhang(built) },
  ];
}

/** mm from the datum, from the keel line and from the centre line: what a ruler might read of the line as built. */
const POINTS: readonly (readonly [PointKey, number])[] = [
  ['motor-1-at', 6],
  ['motor-1-height', 90.5],
  ['motor-1-offset', 55],
  ['motor-2-at', 56],
  ['motor-2-height', 90.5],
  ['motor-2-offset', 55],
  ['tube-1-at', 92],
  ['tube-1-height', 83],
  ['tube-1-offset', 55],
  ['tube-2-at', 384],
  ['tube-2-height', 10],
  ['tube-2-offset', 55.5],
];

function marramMeasures(): LineMeasures {
  const points: MeasuredPoints = Object.fromEntries(
    POINTS.map(([key, value]) => [key, { value: value / 1000, tolerance: 0.0005 }]),
  );
  const hull = { at: 0.355, height: 0.018, riseAft: 8 * DEGREE, riseToPort: 4 * DEGREE };
  return { points, drilling: { tubeDiameter: 0.008, bulkheads: [0.15, 0.26], hull } };
}

function changePropellerShaft(line: ShaftLine, name: string, change: (shaft: Shaft) => Shaft): ShaftLine {
  const shafts = line.shafts.map((shaft, i) => (i === line.shafts.length - 1 ? change(shaft) : shaft));
  return parseShaftLine({ ...line, name, shafts });
}

/** The same bend of 14° shared by two joints with a short shaft between them. */
function withTwoJoints(line: ShaftLine): ShaftLine {
  const [motor, propeller] = line.shafts;
  const [joint] = line.joints;
  if (!motor || !propeller || !joint) return line;
  const between: Shaft = {
    name: 'intermediate shaft',
    length: 0.045,
    outerDiameter: 0.005,
    innerDiameter: 0,
    material: propeller.material,
    elevation: -7 * DEGREE,
    plan: 0,
    yokeTwist: 0,
    supports: [],
    discs: [],
  };
  return parseShaftLine({
    ...line,
    name: 'Two joints, 5 mm',
    shafts: [motor, between, propeller],
    joints: [joint, joint],
  });
}

function withSixMillimetres(line: ShaftLine): ShaftLine {
  return changePropellerShaft(line, 'One joint, 6 mm', (shaft) => ({
    ...shaft,
    outerDiameter: 0.006,
    tubeBore: 0.008,
    supports: shaft.supports.map((support) => ({ ...support, bore: 0.00603 })),
  }));
}

function withMiddleBush(line: ShaftLine): ShaftLine {
  return changePropellerShaft(line, 'One joint, 5 mm, middle bush', (shaft) => {
    const [front, rear] = shaft.supports;
    if (!front || !rear) return shaft;
    return { ...shaft, supports: [front, { ...front, at: (front.at + rear.at) / 2 }, rear] };
  });
}

function withLessOverhang(line: ShaftLine): ShaftLine {
  return changePropellerShaft(line, 'One joint, 5 mm, 16 mm overhang', (shaft) => {
    const rear = shaft.supports.at(-1);
    if (!rear) return shaft;
    return {
      ...shaft,
      length: rear.at + 0.028,
      discs: shaft.discs.map((disc) => ({ ...disc, at: rear.at + 0.016 })),
    };
  });
}

/** Runs of the line as built: where it shakes most, by sound and by motion; lower down; and with its propeller balanced. */
export function marramTrials(): Trial[] {
  const loud = 3700 * RPM;
  const slow = 1800 * RPM;
  return [
    simulated('marram-sound', 'Bath, 3 700 rpm, sound', {
      ...SOUND,
      speed: loud,
      seed: 13,
      tones: [{ frequency: 1180, amplitude: 0.0012 }],
    }),
    simulated('marram-motion', 'Bath, 3 700 rpm, motion', { ...PHONE, speed: loud, seed: 11 }),
    simulated('marram-slow', 'Bath, 1 800 rpm, motion', { ...PHONE, speed: slow, seed: 12 }),
    simulated('marram-balanced', 'Bath, 3 700 rpm, motion, propeller balanced', {
      ...PHONE,
      speed: loud,
      seed: 14,
      line: withBalancedPropeller(exampleLine()),
    }),
  ];
}

/** kg: what the phone's place on the bearers moves with. */
const HELD = 1.5;

const PHONE = {
  duration: 20,
  sampleRate: 203,
  hullMass: HELD,
  stampJitter: 0.0008,
  stampStep: 0.001,
  resolution: 0.005,
} as const;

const SOUND = { kind: 'sound', duration: 6, sampleRate: 8000, hullMass: HELD } as const;

/** A fifth of the unbalance is left. */
function withBalancedPropeller(line: ShaftLine): ShaftLine {
  return changePropellerShaft(line, line.name, (shaft) => ({
    ...shaft,
    discs: shaft.discs.map((disc) => ({ ...disc, unbalance: 0.2 * (disc.unbalance ?? 0) })),
  }));
}

type SimulatedRun = SimulationOptions & { readonly speed: number; readonly line?: ShaftLine };

function simulated(id: string, name: string, { line = exampleLine(), ...options }: SimulatedRun): Trial {
  const { recording } = simulateTrial(line, { ...options, name });
  return {
    id,
    name,
    lineId: 'marram-as-built',
    speed: options.speed,
    note: `Simulated from the line as built, seed ${options.seed}. The phone lies on the bearers beside the motor.`,
    simulated: true,
    recording,
  };
}
