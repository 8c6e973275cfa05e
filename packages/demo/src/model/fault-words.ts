import type { LineFault } from '@sternline/core';
import type { Units } from './project.js';
import { formatFigure, type ScreenQuantity } from './units.js';

/**
 * A fault of a line in the reader's units.
 *
 * @param fault - condition and value in SI
 * @param units - metric or inch
 * @returns such as `Must be less than 5 mm (the shaft's outer diameter), not 6 mm.`
 */
export function faultWords({ path, condition, got }: LineFault, units: Units): string {
  if (Number.isNaN(got)) return 'Has no value that can be used.';
  const quantity = quantityOf(path);
  const plain = condition.replace(/finite /g, '').replace(SI_UNIT, '');
  const must = sayPlaces(quantity ? sayNumbers(plain, quantity, units) : plain);
  if (typeof got !== 'number') return `Must be ${must}.`;
  return `Must be ${must}, not ${quantity ? formatFigure(got, quantity, units) : String(got)}.`;
}

/** The id of the part that a path of a fault lies in, as the drawing names its parts; undefined for the whole line. */
export function partOfPath(path: string): string | undefined {
  const [, shaft, list, item] = /^shafts\[(\d+)\](?:\.(supports|discs)\[(\d+)\])?/.exec(path) ?? [];
  if (shaft !== undefined && list === 'supports') return `support-${shaft}-${item ?? '0'}`;
  if (shaft !== undefined && list === 'discs') return `disc-${shaft}-${item ?? '0'}`;
  if (shaft !== undefined) return `shaft-${shaft}`;
  const joint = /^joints\[(\d+)\]/.exec(path)?.[1];
  if (joint !== undefined) return `joint-${joint}`;
  return /^(motor|propeller)/.exec(path)?.[0] ?? (path.startsWith('supply') ? 'motor' : undefined);
}

/** The reader's unit stands beside each number instead. */
const SI_UNIT = / in (rad\/s per volt|kg·m²|kg·m|N·m\/rad|N·m|N\/m|kg|rad|Pa|m|Ω|A|V)(?=[ ,]|$)/;

function sayNumbers(text: string, quantity: ScreenQuantity, units: Units): string {
  return text.replace(/(?<![\w[.])\d+(\.\d+)?(e[+-]?\d+)?(?![\w\]])/g, (number) =>
    formatFigure(Number(number), quantity, units),
  );
}

const PLACES: Readonly<Record<string, string>> = {
  shafts: 'shaft',
  supports: 'bush',
  discs: 'disc',
  joints: 'joint',
};

function sayPlaces(text: string): string {
  return text
    .replace(/(shafts|joints|supports|discs)\[(\d+)\]/g, (_, list: string, index: string) => {
      return `${PLACES[list] ?? list} ${Number(index) + 1}`;
    })
    .replace(/(shaft \d+)\.(?=bush|disc)/g, '$1, ');
}

const LENGTHS = ['length', 'at', 'pitch', 'diameter'];
const DIAMETERS = ['outerDiameter', 'innerDiameter', 'bore', 'tubeBore', 'runout'];
const ANGLES = ['elevation', 'plan', 'yokeTwist', 'maxAngle'];
const BY_NAME: Readonly<Record<string, ScreenQuantity>> = {
  mass: 'mass',
  polarInertia: 'inertia',
  diametralInertia: 'inertia',
  rotorInertia: 'inertia',
  unbalance: 'unbalance',
  radialStiffness: 'stiffness',
  speedConstant: 'speed-constant',
  resistance: 'resistance',
  noLoadCurrent: 'current',
  voltage: 'voltage',
  ratedTorque: 'torque',
  seatingTorque: 'torque',
  count: 'count',
};

function quantityOf(path: string): ScreenQuantity | undefined {
  const name = /([a-zA-Z]+)$/.exec(path)?.[1] ?? '';
  if (LENGTHS.includes(name)) return 'length';
  if (DIAMETERS.includes(name)) return 'diameter';
  if (ANGLES.includes(name)) return 'angle';
  return BY_NAME[name];
}
