import * as v from 'valibot';
import { freeShafts } from './free-shafts.js';
import { lineRelations } from './line-relations.js';
import { lineFault, ShaftLineError, type LineFault } from './shaft-line-error.js';
import { shaftLineSchema } from './shaft-line-schema.js';
import { soundValues, type Place } from './sound-values.js';
import type { Shaft, ShaftLine } from './types.js';

/**
 * Checks and completes plain data that describes a shaft line.
 *
 * @param value - anything: the shape is `ShaftLine`, all SI and rad. `material` may be a name of the catalogue
 *   (`MATERIALS`) or a material of your own. Absent is completed so: `joints`, `supports`, `discs` none;
 *   `innerDiameter` 0 (solid); `elevation`, `plan`, `yokeTwist` 0; `mass` and `polarInertia` of a joint 0;
 *   `polarInertia` of a disc 0 (a point mass), its `diametralInertia` half of the polar (a thin disc); `rotorInertia`
 *   and the supply's `resistance` 0; names `shaft line`, `shaft 1` …, `disc`, `own material`. A property that is
 *   undefined counts as absent
 * @returns the completed line; nothing of the argument is changed or shared
 * @throws ShaftLineError listing every fault at once, each as `path must be condition, got value`: shape, misspelt
 *   properties, figures out of range or not finite, what cannot stand together (an inner diameter not below the
 *   outer, a support off its shaft, a joint at 90° or a rigid one that bends by more than 0.5°, inertias of no rigid
 *   body, moduli of no elastic solid), and a mechanism: a line that is not held sideways, by the names of the shafts
 *   that move
 * @remarks Supports hold sideways whether rigid or elastic; a universal joint is a hinge, and so is a flexible one
 *   without a bending stiffness. The motor's bearings are supports of the first shaft and must be given: without them
 *   that shaft hangs free. Materials are isotropic. Joints are fixed along the shaft.
 * @example
 * const line = parseShaftLine({
 *   name: 'Marram, port',
 *   shafts: [
 *     { name: 'motor', length: 0.06, outerDiameter: 0.005, material: 'carbon steel', supports: [{ at: 0.01 }, { at: 0.05 }] },
 *     { name: 'propeller', length: 0.38, outerDiameter: 0.005, material: 'stainless steel 304', elevation: -0.24,
 *       supports: [{ at: 0.03 }, { at: 0.34 }] },
 *   ],
 *   joints: [{ kind: 'universal' }],
 * });
 * line.shafts[1].innerDiameter // → 0
 * parseShaftLine({ ...line, shafts: [line.shafts[0], { ...line.shafts[1], length: -1 }] }) // → throws shafts[1].length must be a finite length in m greater than 0, got -1
 */
export function parseShaftLine(value: unknown): ShaftLine {
  const result = v.safeParse(shaftLineSchema, value);
  const faults = (result.issues ?? []).map((issue) => lineFault(pathOf(issue), issue.message, issue.input));
  faults.push(...faultsAmongSound(result.output, faults));
  if (faults.length > 0 || !result.success) throw new ShaftLineError(faults);
  return completed(result.output);
}

function pathOf(issue: v.BaseIssue<unknown>): string {
  return (issue.path ?? []).reduce((path, item) => {
    const key = String(item.key);
    if (item.type === 'array') return `${path}[${key}]`;
    return path === '' ? key : `${path}.${key}`;
  }, '');
}

function faultsAmongSound(output: unknown, faults: readonly LineFault[]): LineFault[] {
  if (typeof output !== 'object' || output === null) return [];
  const line: Place = { path: '', value: output as Place['value'] };
  const sound = soundValues(faults.map((fault) => fault.path));
  const relations = lineRelations(line, sound);
  const bearing = [...faults, ...relations].some(({ path }) => DECIDES_HOLDING.test(path));
  return bearing ? relations : [...relations, ...mechanismFaults(output as ShaftLine)];
}

/** A fault at one of these leaves open whether the line is held. */
const DECIDES_HOLDING =
  /^(shafts|joints)?(\[\d+\])?(\.(length|kind|bendingStiffness|supports(\[\d+\](\.(at|radialStiffness|fixesSlope|angularStiffness))?)?))?$/;

function mechanismFaults(line: ShaftLine): LineFault[] {
  return freeShafts(line).map(({ first, last, motion }) => {
    const names = line.shafts.slice(first, last + 1).map((shaft, i) => labelled(shaft, first + i));
    const held =
      last > first
        ? 'give one of them a support'
        : 'give it a further support away from there, or one that fixes its slope';
    const condition = `enough to hold the line sideways: ${names.join(' and ')} ${names.length > 1 ? 'are' : 'is'} free to ${motion}, a mechanism; ${held}`;
    const supports = line.shafts.slice(first, last + 1).flatMap((shaft) => shaft.supports);
    return lineFault(`shafts[${first}].supports`, condition, supports);
  });
}

function labelled(shaft: Partial<Shaft>, index: number): string {
  return shaft.name ? `shafts[${index}] (${JSON.stringify(shaft.name)})` : `shafts[${index}]`;
}

/** Fills in what depends on other values, and sets on the end of a shaft what rounding put beyond it. */
function completed(line: v.InferOutput<typeof shaftLineSchema>): ShaftLine {
  return {
    ...line,
    shafts: line.shafts.map((shaft, index) => ({
      ...shaft,
      name: shaft.name === '' ? `shaft ${index + 1}` : shaft.name,
      supports: shaft.supports.map((support) => ({ ...support, at: Math.min(support.at, shaft.length) })),
      discs: shaft.discs.map((disc) => ({
        ...disc,
        at: Math.min(disc.at, shaft.length),
        diametralInertia: disc.diametralInertia ?? disc.polarInertia / 2,
      })),
    })),
  };
}
