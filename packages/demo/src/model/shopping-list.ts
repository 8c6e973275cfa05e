import type { Fastener, Shaft, ShaftLine, Support } from '@sternline/core';
import type { LineMeasures } from './measures.js';
import type { Units } from './project.js';
import { formatFigure } from './units.js';

/** One thing to buy or make. */
export interface ShoppingItem {
  readonly count: number;
  readonly what: string;
  readonly details: string;
}

/**
 * What a line is made of, as a shop would be asked for it; alike things together.
 *
 * @param line - a checked line
 * @param measures - what was settled beside its shape
 * @param units - metric or inch
 */
export function shoppingList(line: ShaftLine, measures: LineMeasures, units: Units): ShoppingItem[] {
  const shafts = line.motor ? line.shafts.slice(1) : line.shafts;
  return together([
    ...motorItems(line, units),
    ...line.joints.map((joint): ShoppingItem => ({
      count: 1,
      what: joint.kind === 'universal' ? 'universal joint' : `${joint.kind} coupling`,
      details: `${formatFigure(joint.mass, 'mass', units)}${joint.maxAngle === undefined ? '' : `, for up to ${formatFigure(joint.maxAngle, 'angle', units)}`}${fastenerWords(joint.fastener)}`,
    })),
    ...shafts.map((shaft) => shaftItem(shaft, units)),
    ...shafts.flatMap((shaft) => tubeItem(shaft, measures, units)),
    ...shafts.flatMap((shaft) => shaft.supports.map((support) => bushItem(shaft, support, units))),
    ...propellerItems(line, units),
  ]);
}

function motorItems({ motor, supply, shafts }: ShaftLine, units: Units): ShoppingItem[] {
  if (!motor) return [];
  const bore = formatFigure(shafts[0]?.outerDiameter ?? 0, 'diameter', units);
  const volts = supply ? `, run on ${formatFigure(supply.voltage, 'voltage', units)}` : '';
  return [
    {
      count: 1,
      what: 'motor',
      details: `${formatFigure(motor.speedConstant, 'speed-constant', units)}, ${bore} shaft${volts}`,
    },
  ];
}

function shaftItem(
  { name, material, outerDiameter, innerDiameter, length }: Shaft,
  units: Units,
): ShoppingItem {
  const section =
    innerDiameter > 0
      ? `${formatFigure(outerDiameter, 'diameter', units)} tube with ${formatFigure(innerDiameter, 'diameter', units)} bore`
      : `${formatFigure(outerDiameter, 'diameter', units)} ground bar`;
  return {
    count: 1,
    what: name === '' ? 'shaft' : name,
    details: `${material.name}, ${section}, ${formatFigure(length, 'length', units)} as drawn`,
  };
}

function tubeItem({ tubeBore, supports }: Shaft, { drilling }: LineMeasures, units: Units): ShoppingItem[] {
  if (tubeBore === undefined) return [];
  const places = supports.map(({ at, length = 0 }) => [at - length / 2, at + length / 2]).flat();
  const reach = places.length > 0 ? Math.max(...places) - Math.min(...places) : 0;
  const outside =
    drilling?.tubeDiameter === undefined
      ? ''
      : `, ${formatFigure(drilling.tubeDiameter, 'diameter', units)} outside`;
  const long = reach > 0 ? `, ${formatFigure(reach, 'length', units)} over its bushes` : '';
  return [
    {
      count: 1,
      what: 'stern tube',
      details: `${formatFigure(tubeBore, 'diameter', units)} bore${outside}${long}`,
    },
  ];
}

function bushItem({ outerDiameter }: Shaft, { lining, length, bore }: Support, units: Units): ShoppingItem {
  const fit =
    bore === undefined
      ? formatFigure(outerDiameter, 'diameter', units)
      : formatFigure(bore, 'diameter', units);
  const long = length === undefined ? '' : `, ${formatFigure(length, 'length', units)} long`;
  return { count: 1, what: 'bush', details: `${lining ?? 'lining not entered'}, ${fit} bore${long}` };
}

function propellerItems({ propeller, shafts }: ShaftLine, units: Units): ShoppingItem[] {
  if (!propeller) return [];
  const disc = shafts.at(-1)?.discs.at(-1);
  const weight = disc ? `, ${formatFigure(disc.mass, 'mass', units)}` : '';
  return [
    {
      count: 1,
      what: 'propeller',
      details: `${propeller.blades} blades, ${formatFigure(propeller.diameter, 'length', units)} across, ${formatFigure(propeller.pitch, 'length', units)} pitch${weight}`,
    },
  ];
}

function fastenerWords(fastener: Fastener | undefined): string {
  if (fastener?.kind !== 'set-screw' || fastener.size === undefined) return '';
  const size = `M${Number((fastener.size * 1000).toFixed(1))}`;
  return `, ${fastener.count ?? 1} set screw${(fastener.count ?? 1) > 1 ? 's' : ''} ${size} a side${fastener.threadLock === true ? ' with thread lock' : ''}`;
}

function together(items: readonly ShoppingItem[]): ShoppingItem[] {
  const found = new Map<string, ShoppingItem>();
  for (const item of items) {
    const key = `${item.what} ${item.details}`;
    const known = found.get(key);
    found.set(key, known ? { ...known, count: known.count + item.count } : item);
  }
  return [...found.values()];
}
