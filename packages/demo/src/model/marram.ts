import { exampleLine, parseShaftLine, simulateTrial, type Shaft, type ShaftLine } from '@sternline/core';
import type { Trial } from './project.js';

/*
 * The invented ferry Marram, 1:40, 1.42 m, twin screw: the port line as first built, and four ways to change it.
 * Nothing here was measured; the trials are simulated from the line itself with stated seeds.
 */

const DEGREE = Math.PI / 180;
const RPM = Math.PI / 30;

/** rad/s: 3 300 rpm, at which the ferry reaches her scale speed. */
export const MARRAM_SPEED = 3300 * RPM;

/** The lines of the sample project, the one as first built in front. */
export function marramLines(): { readonly id: string; readonly line: ShaftLine }[] {
  const built = exampleLine();
  return [
    { id: 'marram-as-built', line: built },
    { id: 'marram-two-joints', line: withTwoJoints(built) },
    { id: 'marram-six', line: withSixMillimetres(built) },
    { id: 'marram-middle-bush', line: withMiddleBush(built) },
    { id: 'marram-short-overhang', line: withLessOverhang(built) },
  ];
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

/** Three runs of the line as built: the phone's motion and sound at the wanted speed, and its motion lower down. */
export function marramTrials(): Trial[] {
  const line = exampleLine();
  const phone = { duration: 20, stampJitter: 0.0008, stampStep: 0.001, resolution: 0.005 };
  const water = simulateTrial(line, {
    ...phone,
    name: 'Bath, 3 300 rpm, motion',
    speed: MARRAM_SPEED,
    sampleRate: 203,
    seed: 11,
  });
  const slow = simulateTrial(line, {
    ...phone,
    name: 'Bath, 1 800 rpm, motion',
    speed: 1800 * RPM,
    sampleRate: 203,
    seed: 12,
  });
  const sound = simulateTrial(line, {
    name: 'Bath, 3 300 rpm, sound',
    kind: 'sound',
    speed: MARRAM_SPEED,
    duration: 6,
    sampleRate: 8000,
    seed: 13,
    tones: [{ frequency: 1180, amplitude: 0.006 }],
  });
  const note = 'Simulated from the line as built. The phone lies on the bearers beside the motor.';
  return [
    { trial: sound, id: 'marram-sound', speed: MARRAM_SPEED, seed: 13 },
    { trial: water, id: 'marram-motion', speed: MARRAM_SPEED, seed: 11 },
    { trial: slow, id: 'marram-slow', speed: 1800 * RPM, seed: 12 },
  ].map(({ trial, id, speed, seed }) => ({
    id,
    name: trial.recording.name,
    lineId: 'marram-as-built',
    speed,
    note: `${note} Seed ${seed}.`,
    simulated: true,
    recording: trial.recording,
  }));
}
