import type {
  DrillingPlan,
  HullStation,
  LineMeasures,
  MeasuredPoints,
  Reading,
  ShimMethod,
} from './measures.js';
import { POINT_KEYS } from './measures.js';
import { asFields, type Fields } from './plain-data.js';

/** Takes a fault in the measures of a line, as a sentence without its place. */
type Complain = (fault: string) => void;

/**
 * Reads what a project file says was measured for a line.
 *
 * @param value - anything; undefined, as in files from before there were measures, is none
 * @param complain - is told every fault
 * @returns the measures, or undefined where there are none
 */
export function readMeasures(value: unknown, complain: Complain): LineMeasures | undefined {
  if (value === undefined) return undefined;
  const fields = asFields(value);
  if (!fields) {
    complain('its measures are no list of named values.');
    return undefined;
  }
  return {
    ...optional('points', readPoints(asFields(fields['points']), complain)),
    ...optional('shims', readShims(asFields(fields['shims']), complain)),
    ...optional('drilling', readDrilling(asFields(fields['drilling']), complain)),
    ...numbersOf(fields, ['splineTeeth', 'friction'], complain),
  };
}

function readPoints(fields: Fields | undefined, complain: Complain): MeasuredPoints | undefined {
  if (!fields) return undefined;
  const points = POINT_KEYS.flatMap((key): [string, Reading][] => {
    const reading = asFields(fields[key]);
    if (!reading) return [];
    const { tolerance = NaN, value } = numbersOf(reading, ['value', 'tolerance'], complain);
    if (!(tolerance >= 0)) complain(`the tolerance of ${key} is not a number from 0 up.`);
    return [[key, { ...optional('value', value), tolerance }]];
  });
  return Object.fromEntries(points);
}

const METHODS: readonly ShimMethod[] = ['rim-and-face', 'reverse-indicator', 'ruler-and-feeler'];

function readShims(fields: Fields | undefined, complain: Complain): LineMeasures['shims'] {
  if (!fields) return undefined;
  const method = METHODS.find((known) => known === fields['method']);
  const given = asFields(fields['values']) ?? {};
  const values = Object.entries(numbersOf(given, Object.keys(given), complain)).flatMap(([path, value]) =>
    value === undefined ? [] : [[path, value] as const],
  );
  if (!method) complain('its readings for shims name no method that this page knows.');
  return method ? { method, values: Object.fromEntries(values) } : undefined;
}

function readDrilling(fields: Fields | undefined, complain: Complain): DrillingPlan | undefined {
  if (!fields) return undefined;
  const bulkheads: unknown = fields['bulkheads'] ?? [];
  const places = Array.isArray(bulkheads) ? bulkheads.filter((at): at is number => Number.isFinite(at)) : [];
  if (!Array.isArray(bulkheads) || places.length < bulkheads.length) {
    complain('the places of its bulkheads are not all numbers.');
  }
  const hull = asFields(fields['hull']);
  return {
    ...numbersOf(fields, ['tubeDiameter'], complain),
    bulkheads: places,
    ...optional('hull', hull ? readHull(hull, complain) : undefined),
  };
}

function readHull(fields: Fields, complain: Complain): HullStation {
  return numbersOf(fields, ['at', 'height', 'riseAft', 'riseToPort'], complain);
}

function numbersOf<Name extends string>(
  fields: Fields,
  names: readonly Name[],
  complain: Complain,
): Partial<Record<Name, number>> {
  const found: Partial<Record<Name, number>> = {};
  for (const name of names) {
    const value = fields[name];
    if (typeof value === 'number' && Number.isFinite(value)) found[name] = value;
    else if (value !== undefined) complain(`the measure “${name}” is not a number.`);
  }
  return found;
}

function optional<Name extends string, Value>(
  name: Name,
  value: Value | undefined,
): Partial<Record<Name, Value>> {
  return value === undefined ? {} : ({ [name]: value } as Record<Name, Value>);
}
