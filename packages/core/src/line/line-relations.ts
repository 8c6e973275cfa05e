import { jointBend } from './joint-bend.js';
import { lineFault, type LineFault } from './shaft-line-error.js';
import type { Place, SoundValues } from './sound-values.js';

/** rad; a coupling that cannot bend is fitted by hand, but at more than this the two are no longer one shaft. */
const RIGID_JOINT_ANGLE = (0.5 * Math.PI) / 180;
/** rad; nearer to a right angle than this, a joint's figures are rounding. */
const LARGEST_JOINT_ANGLE = Math.PI / 2 - 1e-9;
/** Share of the shaft's length within which two places are one. */
export const SAME_PLACE = 1e-9;
/** Share by which inertias rounded for a form may exceed what a rigid body allows. */
const INERTIA_ROUNDING = 0.01;

/**
 * Faults between values that are each possible on their own: diameters, places, angles, counts, currents.
 *
 * @param line - the whole line, as far as it was understood
 * @param sound - reads those of its values that have no fault of their own
 */
export function lineRelations(line: Place, sound: SoundValues): LineFault[] {
  const shafts = sound.list(line, 'shafts') ?? [];
  return [
    ...shafts.flatMap((shaft) => shaftRelations(shaft, sound)),
    ...jointCount(line, sound),
    ...jointRelations(line, sound),
    ...needlessStiffness(line, sound),
    ...startingCurrent(line, sound),
  ];
}

function shaftRelations(shaft: Place, sound: SoundValues): LineFault[] {
  const supports = sound.list(shaft, 'supports') ?? [];
  const discs = sound.list(shaft, 'discs') ?? [];
  return [
    ...diameters(shaft, sound),
    ...poissonsRatio(shaft, sound),
    ...[...supports, ...discs].flatMap((item) => onShaft(item, sound.number(shaft, 'length'), sound)),
    ...supports.flatMap((support) => boreTakesShaft(support, sound.number(shaft, 'outerDiameter'), sound)),
    ...coincidentSupports(supports, sound.number(shaft, 'length'), sound),
    ...discs.flatMap((disc) => rigidBody(disc, sound)),
  ];
}

function diameters(shaft: Place, sound: SoundValues): LineFault[] {
  const outer = sound.number(shaft, 'outerDiameter');
  const inner = sound.number(shaft, 'innerDiameter');
  const tube = sound.number(shaft, 'tubeBore');
  if (outer === undefined) return [];
  return [
    ...faultIf(inner !== undefined && inner >= outer, () =>
      lineFault(`${shaft.path}.innerDiameter`, `less than ${outer} (the shaft's outer diameter)`, inner),
    ),
    ...faultIf(tube !== undefined && tube <= outer, () =>
      lineFault(`${shaft.path}.tubeBore`, `greater than ${outer} (the shaft's outer diameter)`, tube),
    ),
  ];
}

/** E = 2G(1 + ν) with ν below 0.5, beyond which a body would swell when pressed. */
function poissonsRatio(shaft: Place, sound: SoundValues): LineFault[] {
  const material = sound.object(shaft, 'material');
  if (!material) return [];
  const youngs = sound.number(material, 'youngsModulus');
  const shear = sound.number(material, 'shearModulus');
  if (youngs === undefined || shear === undefined || shear > youngs / 3) return [];
  const condition = `greater than ${Number((youngs / 3).toPrecision(4))} (a third of Young's modulus: Poisson's ratio is below 0.5)`;
  return [lineFault(`${material.path}.shearModulus`, condition, shear)];
}

function onShaft(item: Place, length: number | undefined, sound: SoundValues): LineFault[] {
  const at = sound.number(item, 'at');
  if (at === undefined || length === undefined || at <= length * (1 + SAME_PLACE)) return [];
  return [lineFault(`${item.path}.at`, `from 0 to ${length} (the shaft's length)`, at)];
}

function boreTakesShaft(support: Place, outer: number | undefined, sound: SoundValues): LineFault[] {
  const bore = sound.number(support, 'bore');
  if (bore === undefined || outer === undefined || bore >= outer) return [];
  return [lineFault(`${support.path}.bore`, `at least ${outer} (the shaft's outer diameter)`, bore)];
}

function coincidentSupports(
  supports: readonly Place[],
  length: number | undefined,
  sound: SoundValues,
): LineFault[] {
  if (length === undefined) return [];
  const rigid = supports.filter((support) => support.value['radialStiffness'] === undefined);
  return rigid.flatMap((support, index) => {
    const at = sound.number(support, 'at');
    const twin = rigid.slice(0, index).find((other) => {
      const there = sound.number(other, 'at');
      return at !== undefined && there !== undefined && Math.abs(at - there) <= SAME_PLACE * length;
    });
    if (!twin) return [];
    const why =
      'two rigid supports at one place hold no more than one, and their shares of the load are undefined';
    return [lineFault(`${support.path}.at`, `away from ${twin.path} (${why})`, at)];
  });
}

/** Of any rigid body, no principal moment of inertia exceeds the sum of the other two. */
function rigidBody(disc: Place, sound: SoundValues): LineFault[] {
  const polar = sound.number(disc, 'polarInertia');
  const diametral = sound.number(disc, 'diametralInertia');
  if (polar === undefined || diametral === undefined || polar <= 2 * diametral * (1 + INERTIA_ROUNDING))
    return [];
  const condition = `at most ${2 * diametral} (twice the diametral inertia, which only a thin disc reaches)`;
  return [lineFault(`${disc.path}.polarInertia`, condition, polar)];
}

function jointCount(line: Place, sound: SoundValues): LineFault[] {
  const shafts = line.value['shafts'];
  const joints = line.value['joints'];
  if (!Array.isArray(shafts) || !Array.isArray(joints) || sound.faulty(/^(shafts|joints)$/)) return [];
  if (joints.length === shafts.length - 1) return [];
  const condition = `a list of ${shafts.length - 1} (one joint between each shaft and the next)`;
  return [lineFault('joints', condition, joints)];
}

function jointRelations(line: Place, sound: SoundValues): LineFault[] {
  const shafts = sound.list(line, 'shafts') ?? [];
  return (sound.list(line, 'joints') ?? []).flatMap((joint, index) => {
    const from = direction(shafts[index], sound);
    const to = direction(shafts[index + 1], sound);
    if (!from || !to) return [];
    const angle = Number(jointBend(from, to).angle.toPrecision(12));
    const kind = sound.text(joint, 'kind');
    const between = `between shafts[${index}] and shafts[${index + 1}]`;
    if (kind === 'rigid' && angle > RIGID_JOINT_ANGLE) {
      const condition = `at an angle of at most 0.0087 rad (0.5°) ${between}, since a rigid joint cannot bend`;
      return [lineFault(joint.path, condition, angle)];
    }
    if (angle < LARGEST_JOINT_ANGLE) return [];
    return [lineFault(joint.path, `at an angle of less than π/2 rad (90°) ${between}`, angle)];
  });
}

function needlessStiffness(line: Place, sound: SoundValues): LineFault[] {
  return (sound.list(line, 'joints') ?? []).flatMap((joint) => {
    const kind = sound.text(joint, 'kind');
    const stiffness = sound.number(joint, 'bendingStiffness');
    if (stiffness === undefined || kind === undefined || kind === 'flexible') return [];
    const condition = `left out (a ${kind} joint has none: only a flexible one bends against a stiffness)`;
    return [lineFault(`${joint.path}.bendingStiffness`, condition, stiffness)];
  });
}

function direction(
  shaft: Place | undefined,
  sound: SoundValues,
): { elevation: number; plan: number } | undefined {
  if (!shaft) return undefined;
  const elevation = sound.number(shaft, 'elevation');
  const plan = sound.number(shaft, 'plan');
  return elevation === undefined || plan === undefined ? undefined : { elevation, plan };
}

/** A motor whose no-load current the supply cannot drive never turns. */
function startingCurrent(line: Place, sound: SoundValues): LineFault[] {
  const motor = sound.object(line, 'motor');
  const supply = sound.object(line, 'supply');
  if (!motor || !supply) return [];
  const current = sound.number(motor, 'noLoadCurrent');
  const voltage = sound.number(supply, 'voltage');
  const motorResistance = sound.number(motor, 'resistance');
  const supplyResistance = sound.number(supply, 'resistance');
  if (current === undefined || voltage === undefined) return [];
  if (motorResistance === undefined || supplyResistance === undefined) return [];
  const stall = voltage / (motorResistance + supplyResistance);
  if (current < stall) return [];
  const condition = `less than ${Number(stall.toPrecision(4))} (the current that the supply drives through the motor at rest)`;
  return [lineFault('motor.noLoadCurrent', condition, current)];
}

function faultIf(holds: boolean, fault: () => LineFault): LineFault[] {
  return holds ? [fault()] : [];
}
