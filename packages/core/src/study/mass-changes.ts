import type { Disc, Joint, ShaftLine } from '../line/types.js';
import { USUAL_BALANCE_GRADE } from '../line/usual-balance-grade.js';
import { permissibleUnbalance } from '../loads/permissible-unbalance.js';
import { isPropeller } from '../twist/is-propeller.js';
import { costsOf, withShaft, type LineChange } from './line-change.js';
import { figure, makeStatement } from './statement.js';

/** A joint of aluminium or acetal against one of brass or steel; common practice, no source. */
const LIGHT_JOINT = 0.5;
/** A propeller of filled nylon with a brass hub against one of brass; common practice, no source. */
const LIGHT_PROPELLER = 0.35;
/** kg; lighter parts are left alone. */
const LIGHT = 0.003;
/** Balance grade that a static balance on knife edges reaches, ISO 21940-11. Common practice. */
const BALANCED = 6.3;

/** Lighter joints, a lighter propeller, a balanced one. */
export function massChanges(line: ShaftLine, { speed }: { readonly speed: number }): LineChange[] {
  return [...lighterPropeller(line), ...balancedPropeller(line, speed), ...lighterJoints(line)];
}

function isHeavy({ kind, mass }: Joint): boolean {
  return kind === 'universal' && mass >= LIGHT;
}

/** A lighter joint is taken to be rated for as much less as it weighs less. */
function lighter(joint: Joint): Joint {
  const { mass, polarInertia, ratedTorque } = joint;
  return {
    ...joint,
    mass: mass * LIGHT_JOINT,
    polarInertia: polarInertia * LIGHT_JOINT,
    ...(ratedTorque === undefined ? {} : { ratedTorque: ratedTorque * LIGHT_JOINT }),
  };
}

function lighterJoints(line: ShaftLine): LineChange[] {
  const heavy = line.joints.filter(isHeavy);
  const mass = Math.max(...heavy.map((joint) => joint.mass));
  if (heavy.length === 0) return [];
  const figures = {
    count: figure('count', heavy.length),
    mass: figure('mass', mass * LIGHT_JOINT),
    present: figure('mass', mass),
  };
  const many = heavy.length > 1;
  return [
    {
      kind: 'joint',
      heading: makeStatement(`${many ? 'Joints' : 'Joint'} of {mass} in place of {present}`, figures),
      apply: (one) => ({
        ...one,
        joints: one.joints.map((joint) => (isHeavy(joint) ? lighter(joint) : joint)),
      }),
      costs: costsOf({
        work: 2,
        money: 2,
        destructive: 'no',
        takes: [makeStatement('motor slid ahead, joint swapped, screws seated', {})],
        buy: [makeStatement(`{count} joint${many ? 's' : ''} of aluminium or acetal, about {mass}`, figures)],
      }),
    },
  ];
}

type PropellerChange = Omit<LineChange, 'apply'> & { readonly of: (disc: Disc) => Disc };

/** The change on the discs that are the propeller. */
function onPropeller(line: ShaftLine, { of, ...rest }: PropellerChange): LineChange {
  const shaft = line.shafts.length - 1;
  const rotors = new Set(propellers(line).map((disc) => line.shafts[shaft]?.discs.indexOf(disc)));
  return {
    ...rest,
    apply: (one) =>
      withShaft(one, shaft, (own) => ({
        ...own,
        discs: own.discs.map((disc, i) => (rotors.has(i) ? of(disc) : disc)),
      })),
  };
}

function propellers(line: ShaftLine): readonly Disc[] {
  const shaft = line.shafts.length - 1;
  return (line.shafts[shaft]?.discs ?? []).filter((disc) => isPropeller(line, { shaft, disc }));
}

function scaled(disc: Disc): Disc {
  const { mass, polarInertia, diametralInertia, unbalance } = disc;
  return {
    ...disc,
    mass: mass * LIGHT_PROPELLER,
    polarInertia: polarInertia * LIGHT_PROPELLER,
    diametralInertia: diametralInertia * LIGHT_PROPELLER,
    ...(unbalance === undefined ? {} : { unbalance: unbalance * LIGHT_PROPELLER }),
  };
}

function lighterPropeller(line: ShaftLine): LineChange[] {
  const mass = propellers(line).reduce((sum, disc) => sum + disc.mass, 0);
  const { blades, diameter, pitch } = line.propeller ?? {};
  if (mass * LIGHT_PROPELLER < LIGHT || blades === undefined) return [];
  const figures = {
    mass: figure('mass', mass * LIGHT_PROPELLER),
    present: figure('mass', mass),
    diameter: figure('length', diameter ?? 0),
    pitch: figure('length', pitch ?? 0),
  };
  return [
    onPropeller(line, {
      kind: 'propeller',
      heading: makeStatement('Propeller of {mass} in place of {present}', figures),
      of: scaled,
      costs: costsOf({
        work: 1,
        money: 2,
        destructive: 'no',
        takes: [makeStatement('propeller swapped for one of the same size', {})],
        buy: [
          makeStatement(
            `propeller of filled nylon, ${blades} blades, {diameter}, pitch {pitch}, about {mass}`,
            figures,
          ),
        ],
      }),
    }),
  ];
}

function balancedPropeller(line: ShaftLine, speed: number): LineChange[] {
  const rotors = propellers(line);
  const left = ({ mass }: Disc) => permissibleUnbalance({ grade: BALANCED, mass, speed });
  const present = (disc: Disc) =>
    disc.unbalance ?? permissibleUnbalance({ grade: USUAL_BALANCE_GRADE, mass: disc.mass, speed });
  const before = rotors.reduce((sum, disc) => sum + present(disc), 0);
  const after = rotors.reduce((sum, disc) => sum + Math.min(left(disc), present(disc)), 0);
  if (!(after < 0.9 * before)) return [];
  const figures = {
    force: figure('force', after * speed ** 2),
    present: figure('force', before * speed ** 2),
  };
  return [
    onPropeller(line, {
      kind: 'balance',
      heading: makeStatement('Propeller balanced: {force} of unbalance in place of {present}', figures),
      of: (disc) => ({ ...disc, unbalance: Math.min(left(disc), present(disc)) }),
      costs: costsOf({
        work: 2,
        money: 1,
        destructive: 'reversible',
        takes: [
          makeStatement(
            'balanced on level edges, or by four runs with a mass that is screwed or tied and wrapped, never putty alone; a file last',
            {},
          ),
        ],
        buy: [],
      }),
    }),
  ];
}
