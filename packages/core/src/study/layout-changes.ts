import { jointAngles } from '../line/joint-angles.js';
import { shaftDirection } from '../line/shaft-direction.js';
import type { Shaft, ShaftLine } from '../line/types.js';
import { yokePhase } from '../motion/yoke-phase.js';
import type { Vector3 } from '../numerics/vector.js';
import { costsOf, type LineChange } from './line-change.js';
import { figure, makeStatement } from './statement.js';

/** Length of a shaft between two joints in diameters: room for two joint halves; common practice, no source. */
const BETWEEN = 9;
/** rad; a straight joint is not split. */
const STRAIGHT = 0.002;
/** Fluctuation that turning the yokes must take away to be offered. */
const FELT = 1e-4;

/** Two joints for one, one for two, and the yokes turned into phase. */
export function layoutChanges(line: ShaftLine): LineChange[] {
  const universal = line.joints.flatMap(({ kind }, i) => (kind === 'universal' ? [i] : []));
  const [first] = universal;
  if (first === undefined) return [];
  if (universal.length === 1) return twoForOne(line, first);
  return [...(universal.length === 2 ? oneForTwo(line, first) : []), ...yokesTurned(line)];
}

function twoForOne(line: ShaftLine, joint: number): LineChange[] {
  const bend = jointAngles(line)[joint] ?? 0;
  const [from, to] = [line.shafts[joint], line.shafts[joint + 1]];
  if (bend < STRAIGHT || !from || !to) return [];
  const diameter = Math.min(from.outerDiameter, to.outerDiameter);
  const length = BETWEEN * diameter;
  const figures = {
    angle: figure('angle', bend / 2),
    present: figure('angle', bend),
    length: figure('length', length),
    diameter: figure('length', diameter),
  };
  return [
    {
      kind: 'layout',
      heading: makeStatement('Two joints at {angle} in place of one at {present}', figures),
      apply: (one) => split(one, joint, length),
      costs: costsOf({
        work: 5,
        money: 3,
        destructive: 'cutting',
        takes: [
          makeStatement('motor moved ahead by {length}, its bed made new', figures),
          makeStatement(
            'a shaft of {length} between two joints at equal angles, their yokes in phase',
            figures,
          ),
        ],
        buy: [
          makeStatement('one more joint like the first', {}),
          makeStatement(`${to.material.name} bar {diameter}, {length}`, figures),
        ],
      }),
    },
  ];
}

function split(line: ShaftLine, joint: number, length: number): ShaftLine {
  const [from, to, own] = [line.shafts[joint], line.shafts[joint + 1], line.joints[joint]];
  if (!from || !to || !own) return line;
  const between: Shaft = {
    name: 'intermediate shaft',
    length,
    outerDiameter: Math.min(from.outerDiameter, to.outerDiameter),
    innerDiameter: 0,
    material: to.material,
    ...halfway(from, to),
    yokeTwist: 0,
    supports: [],
    discs: [],
  };
  return inPhase({
    ...line,
    shafts: [...line.shafts.slice(0, joint + 1), between, ...line.shafts.slice(joint + 1)],
    joints: [...line.joints.slice(0, joint + 1), own, ...line.joints.slice(joint + 1)],
  });
}

/** The direction that shares the bend between two shafts equally. */
function halfway(from: Shaft, to: Shaft): Pick<Shaft, 'elevation' | 'plan'> {
  const [u, v] = [shaftDirection(from), shaftDirection(to)];
  return directionOf([u[0] + v[0], u[1] + v[1], u[2] + v[2]]);
}

function directionOf([x, y, z]: Vector3): Pick<Shaft, 'elevation' | 'plan'> {
  return { elevation: Math.atan2(z, Math.hypot(x, y)), plan: Math.atan2(y, x) };
}

/** The line with the yokes of its inner shafts where it turns most evenly. */
function inPhase(line: ShaftLine): ShaftLine {
  const best = new Map(yokePhase(line).shafts.map((phase) => [phase.shaft, phase.best]));
  return {
    ...line,
    shafts: line.shafts.map((shaft, i) => ({ ...shaft, yokeTwist: best.get(i) ?? shaft.yokeTwist })),
  };
}

/** The shaft between two joints left out, where nothing stands on it. */
function oneForTwo(line: ShaftLine, joint: number): LineChange[] {
  const between = line.shafts[joint + 1];
  const adjacent = line.joints[joint + 1]?.kind === 'universal';
  if (!between || !adjacent || between.supports.length > 0 || between.discs.length > 0) return [];
  return [
    {
      kind: 'layout',
      heading: makeStatement('One joint in place of two', {}),
      apply: (one) => ({
        ...one,
        shafts: one.shafts.filter((_, i) => i !== joint + 1),
        joints: one.joints.filter((_, i) => i !== joint + 1),
      }),
      costs: costsOf({
        work: 4,
        money: 1,
        destructive: 'cutting',
        takes: [
          makeStatement('motor moved aft by {length}, its axis led to the one joint', {
            length: figure('length', between.length),
          }),
        ],
        buy: [],
      }),
    },
  ];
}

function yokesTurned(line: ShaftLine): LineChange[] {
  const { degree, degreeAtBest, shafts } = yokePhase(line);
  const turned = shafts.filter(({ sense }) => sense !== 'none');
  if (turned.length === 0 || degree - degreeAtBest < FELT) return [];
  const figures = Object.fromEntries(
    turned.map(({ turn }, i) => [`turn${i}`, figure('angle', Math.abs(turn))]),
  );
  const steps = turned.map(
    ({ shaft, sense }, i) =>
      `the propeller-end yoke of the ${line.shafts[shaft]?.name ?? 'shaft'} {turn${i}} ${sense}`,
  );
  return [
    {
      kind: 'yokes',
      heading: makeStatement(`Yokes into phase: turn ${steps.join(', and ')}, seen looking aft`, figures),
      apply: inPhase,
      costs: costsOf({
        work: 1,
        money: 1,
        destructive: 'no',
        takes: [
          makeStatement(
            'the propeller-end half of the shaft loosened, turned as seen looking aft from the motor, and seated again',
            {},
          ),
        ],
        buy: [],
      }),
    },
  ];
}
