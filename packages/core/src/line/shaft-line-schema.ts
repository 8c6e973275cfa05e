import * as v from 'valibot';
import { catalogueCondition, findMaterial, isCatalogued } from './find-material.js';
import { nearestName } from './nearest-name.js';

/*
 * What each value must be on its own. A message is a condition that completes "path must be …"; what values must be to
 * one another stands in `line-relations.ts`.
 */

const positive = (quantity: string) => number(`a finite ${quantity} greater than 0`, (x) => x > 0);
const notNegative = (quantity: string) => number(`a finite ${quantity} of at least 0`, (x) => x >= 0);
const angle = number(
  'a finite angle in rad, at most one turn (2π) either way',
  (x) => Math.abs(x) <= 2 * Math.PI,
);
const text = v.string('a text');
const flag = v.boolean('true or false');

function number(condition: string, holds: (value: number) => boolean) {
  return v.pipe(
    v.number(condition),
    v.check((value) => Number.isFinite(value) && holds(value), condition),
  );
}

function whole(condition: string, holds: (value: number) => boolean) {
  return number(condition, (value) => Number.isInteger(value) && holds(value));
}

function list<const Item extends v.GenericSchema>(of: string, item: Item) {
  return v.array(item, `a list of ${of}`);
}

/** A plain object with these properties and no others; one that is undefined counts as absent. */
function shape<const Entries extends v.ObjectEntries>(noun: string, entries: Entries) {
  const known = Object.keys(entries);
  return v.pipe(
    v.custom<Record<string, unknown>>(isRecord, `an object that describes ${noun}`),
    v.transform(withoutUndefined),
    v.looseObject(entries, (issue) => missing(entries, issue.expected)),
    v.rawCheck(({ dataset, addIssue }) => {
      if (!isRecord(dataset.value)) return;
      const input = dataset.value;
      for (const key of Object.keys(input)) {
        if (known.includes(key)) continue;
        addIssue({
          message: unknownKey(noun, key, known),
          input: input[key],
          path: [{ type: 'object', origin: 'key', input, key, value: input[key] }],
        });
      }
    }),
  );
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function withoutUndefined(value: Record<string, unknown>): Record<string, unknown> {
  return Object.fromEntries(Object.entries(value).filter(([, item]) => item !== undefined));
}

/** The condition of the absent property, which valibot names in quotes. */
function missing(entries: v.ObjectEntries, quotedKey: string | null): string {
  const schema = entries[(quotedKey ?? '').slice(1, -1)];
  return schema && 'message' in schema && typeof schema.message === 'string' ? schema.message : 'given';
}

function unknownKey(noun: string, key: string, known: readonly string[]): string {
  const near = nearestName(key, known);
  return near === undefined ? `left out: ${noun} has only ${known.join(', ')}` : `spelt ${near}`;
}

const materialFigures = shape('a material', {
  name: v.exactOptional(text, 'own material'),
  youngsModulus: positive('modulus in Pa'),
  shearModulus: positive('modulus in Pa'),
  density: positive('density in kg/m³'),
  yieldStrength: positive('stress in Pa'),
});

const materialName = v.pipe(
  text,
  v.check(isCatalogued, (issue) => catalogueCondition(issue.input)),
  v.transform(findMaterial),
);

const material = v.pipe(
  v.custom<unknown>(
    (value) => typeof value === 'string' || isRecord(value),
    'a name of the catalogue, or a material',
  ),
  v.lazy((value) => (typeof value === 'string' ? materialName : materialFigures)),
);

const support = shape('a support', {
  at: notNegative('place in m from the motor end of its shaft,'),
  radialStiffness: v.exactOptional(positive('stiffness in N/m')),
  fixesSlope: v.exactOptional(flag),
  angularStiffness: v.exactOptional(positive('stiffness in N·m/rad')),
  length: v.exactOptional(positive('length in m')),
  bore: v.exactOptional(positive('diameter in m')),
  lining: v.exactOptional(text),
});

const disc = shape('a disc', {
  name: v.exactOptional(text, 'disc'),
  at: notNegative('place in m from the motor end of its shaft,'),
  mass: notNegative('mass in kg'),
  polarInertia: v.exactOptional(notNegative('inertia in kg·m²'), 0),
  diametralInertia: v.exactOptional(notNegative('inertia in kg·m²')),
  unbalance: v.exactOptional(notNegative('unbalance in kg·m')),
});

const shaft = shape('a shaft', {
  name: v.exactOptional(text, ''),
  length: positive('length in m'),
  outerDiameter: positive('diameter in m'),
  innerDiameter: v.exactOptional(notNegative('diameter in m'), 0),
  material,
  elevation: v.exactOptional(angle, 0),
  plan: v.exactOptional(angle, 0),
  yokeTwist: v.exactOptional(angle, 0),
  supports: v.exactOptional(list('supports', support), []),
  discs: v.exactOptional(list('discs', disc), []),
  runout: v.exactOptional(notNegative('reading in m')),
  tubeBore: v.exactOptional(positive('diameter in m')),
});

const fastener = shape('a fastener', {
  kind: v.picklist(
    ['set-screw', 'clamp', 'pin', 'thread', 'bond'],
    'one of set-screw, clamp, pin, thread, bond',
  ),
  size: v.exactOptional(positive('thread diameter in m')),
  count: v.exactOptional(whole('a whole number of at least 1', (x) => x >= 1)),
  flat: v.exactOptional(flag),
  threadLock: v.exactOptional(flag),
  seatingTorque: v.exactOptional(positive('torque in N·m')),
});

const joint = shape('a joint', {
  kind: v.picklist(['universal', 'rigid', 'flexible'], 'one of universal, rigid, flexible'),
  mass: v.exactOptional(notNegative('mass in kg'), 0),
  polarInertia: v.exactOptional(notNegative('inertia in kg·m²'), 0),
  torsionalStiffness: v.exactOptional(positive('stiffness in N·m/rad')),
  bendingStiffness: v.exactOptional(notNegative('stiffness in N·m/rad')),
  maxAngle: v.exactOptional(number('an angle in rad between 0 and π/2', (x) => x > 0 && x < Math.PI / 2)),
  ratedTorque: v.exactOptional(positive('torque in N·m')),
  fastener: v.exactOptional(fastener),
});

const motor = shape('a motor', {
  speedConstant: positive('speed constant in rad/s per volt'),
  resistance: notNegative('resistance in Ω'),
  noLoadCurrent: notNegative('current in A'),
  rotorInertia: v.exactOptional(notNegative('inertia in kg·m²'), 0),
  poles: v.exactOptional(whole('an even whole number of at least 2', (x) => x >= 2 && x % 2 === 0)),
});

const supply = shape('a supply', {
  voltage: positive('voltage in V'),
  resistance: v.exactOptional(notNegative('resistance in Ω'), 0),
});

const propeller = shape('a propeller', {
  blades: whole('a whole number from 1 to 20', (x) => x >= 1 && x <= 20),
  diameter: positive('diameter in m'),
  pitch: positive('pitch in m'),
  torqueCoefficient: v.exactOptional(positive('coefficient K_Q')),
  wetMassFactor: v.exactOptional(number('a finite factor of at least 1', (x) => x >= 1)),
  wetInertiaFactor: v.exactOptional(number('a finite factor of at least 1', (x) => x >= 1)),
});

/** The structure of a shaft line, its defaults, and what each value must be on its own. */
export const shaftLineSchema = shape('a shaft line', {
  name: v.exactOptional(text, 'shaft line'),
  shafts: v.pipe(
    list('shafts', shaft),
    v.check((shafts) => shafts.length > 0, 'a list of one or more shafts'),
  ),
  joints: v.exactOptional(list('joints', joint), []),
  motor: v.exactOptional(motor),
  supply: v.exactOptional(supply),
  propeller: v.exactOptional(propeller),
});
