import type { ShaftLine } from '../line/types.js';
import { bandClearance } from './band-clearance.js';
import type { ComparedFigureKey } from './compare-lines-types.js';
import type { Assessment, Excitation, Quantity } from './types.js';

/** One figure in which lines are compared. */
export interface LineFigure {
  readonly key: ComparedFigureKey;
  readonly name: string;
  readonly quantity: Quantity;
  readonly better: 'larger' | 'smaller';
  readonly of: (line: ShaftLine, assessment: Assessment) => number | undefined;
}

/** The figures of a comparison, those that decide first. */
export const LINE_FIGURES: readonly LineFigure[] = [
  row(
    'speed-limit',
    'Speed limit',
    { quantity: 'speed', better: 'larger' },
    (_, { speedLimit }) => speedLimit.speed,
  ),
  row('clearance', 'Distance to the nearest band', { quantity: 'share', better: 'larger' }, (_, one) =>
    bandClearance(one.speed, one.avoidBands),
  ),
  firstCritical('unbalance', 'First whirl, driven by unbalance'),
  firstCritical('joints', 'First whirl, driven by the joints'),
  firstCritical('blades', 'First whirl, driven by the blades'),
  row(
    'fluctuation',
    'Swing of the propeller’s speed',
    { quantity: 'share', better: 'smaller' },
    (_, one) => one.fluctuation.degree,
  ),
  row('joint-angle', 'Largest joint angle', { quantity: 'angle', better: 'smaller' }, (_, { joints }) =>
    largest(joints.map(({ angle }) => angle)),
  ),
  row(
    'torque-swing',
    'Swing of the torque in a joint',
    { quantity: 'torque', better: 'smaller' },
    (_, { loads }) => largest(loads?.joints.map(({ torqueSwing }) => torqueSwing)),
  ),
  row('rattle', 'Torque swing over mean torque', { quantity: 'ratio', better: 'smaller' }, (_, { loads }) =>
    loads && loads.torque > 0
      ? largest(loads.joints.map((joint) => joint.torqueSwing / loads.torque))
      : undefined,
  ),
  row(
    'strength',
    'Least strength of a shaft over its load',
    { quantity: 'ratio', better: 'larger' },
    (_, { loads }) =>
      smallest(loads?.shafts.map(({ safety }) => Math.min(safety.fatigueFactor, safety.yieldFactor))),
  ),
  row(
    'fastener',
    'Least hold of the set screws over the peak torque',
    { quantity: 'ratio', better: 'larger' },
    (_, one) => smallest(one.loads?.joints.flatMap(({ fastener }) => fastener?.factor ?? [])),
  ),
  row(
    'bush',
    'Largest load of a bush over its limit',
    { quantity: 'ratio', better: 'smaller' },
    (_, { loads }) => largest(loads?.supports.flatMap(({ bush }) => Object.values(bush.shares))),
  ),
  row('mass', 'Mass of shafts, joints and discs', { quantity: 'mass', better: 'smaller' }, massOf),
];

function row(
  key: ComparedFigureKey,
  name: string,
  kind: Pick<LineFigure, 'quantity' | 'better'>,
  of: LineFigure['of'],
): LineFigure {
  return { key, name, ...kind, of };
}

function firstCritical(excitation: Excitation, name: string): LineFigure {
  return row(
    `first-critical-${excitation}`,
    name,
    { quantity: 'speed', better: 'larger' },
    (_, { criticalSpeeds }) =>
      smallest(criticalSpeeds.filter((one) => one.excitation === excitation).map(({ speed }) => speed)),
  );
}

function largest(values: readonly number[] | undefined): number | undefined {
  return values && values.length > 0 ? Math.max(...values) : undefined;
}

function smallest(values: readonly number[] | undefined): number | undefined {
  return values && values.length > 0 ? Math.min(...values) : undefined;
}

function massOf({ shafts, joints }: ShaftLine): number {
  const rods = shafts.map(
    ({ length, outerDiameter, innerDiameter, material }) =>
      (Math.PI / 4) * (outerDiameter ** 2 - innerDiameter ** 2) * length * material.density,
  );
  const discs = shafts.flatMap((shaft) => shaft.discs.map(({ mass }) => mass));
  return [...rods, ...discs, ...joints.map(({ mass }) => mass)].reduce((sum, mass) => sum + mass, 0);
}
