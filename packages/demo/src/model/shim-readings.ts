import { shimMotor, type ClockReadings, type CouplingReadings, type MotorShims } from '@sternline/core';
import type { ShimMethod, ShimReadings } from './measures.js';

/** One number that a method asks for: where it stands in the readings, and what to read. */
export interface ShimField {
  readonly path: string;
  readonly label: string;
  readonly hint: string;
  /** Whether it may be left empty, and what that means. */
  readonly empty?: string;
}

/** Fields that are read together. */
export interface ShimGroup {
  readonly title: string;
  readonly fields: readonly ShimField[];
}

/** Names of the methods, as a builder would choose between them. */
export const SHIM_METHODS: readonly { readonly value: ShimMethod; readonly label: string }[] = [
  { value: 'ruler-and-feeler', label: 'ruler and feeler gauges' },
  { value: 'rim-and-face', label: 'dial on rim and face' },
  { value: 'reverse-indicator', label: 'two dials on the rims, reversed' },
];

/** What a method asks for, in the order in which it is read. */
export function shimGroups(method: ShimMethod): ShimGroup[] {
  switch (method) {
    case 'ruler-and-feeler':
      return [
        {
          title: 'By how much the motor’s hub stands out beyond the other, under a straight edge',
          fields: clock('step', ['bottom', 'starboard']),
        },
        { title: 'Gap between the faces', fields: clock('gap') },
        { title: 'Distances', fields: [FACE, ...FEET] },
      ];
    case 'rim-and-face':
      return [
        { title: 'Dial on the rim of the driven hub, carried by the motor', fields: clock('rim') },
        { title: 'Dial on its face towards the motor', fields: clock('face') },
        { title: 'Distances', fields: [FACE, SAG, ...FEET] },
      ];
    case 'reverse-indicator':
      return [
        { title: 'Dial carried by the motor, on the driven hub', fields: clock('onShaft') },
        { title: 'Dial carried by the driven shaft, on the motor’s hub', fields: clock('onMotor') },
        { title: 'Distances', fields: [SEPARATION, SAG, ...FEET] },
      ];
  }
}

const SIDES = ['top', 'bottom', 'port', 'starboard'] as const;

function clock(name: string, optional: readonly string[] = []): ShimField[] {
  return SIDES.map((side) => ({
    path: `${name}.${side}`,
    label: side.charAt(0).toUpperCase() + side.slice(1),
    hint: '',
    ...(optional.includes(side) ? { empty: 'hubs of one size' } : {}),
  }));
}

const FACE: ShimField = {
  path: 'faceDiameter',
  label: 'Diameter across the face',
  hint: 'Of the circle that the dial or the feelers touch.',
};
const SAG: ShimField = {
  path: 'sag',
  label: 'Sag of the bracket',
  hint: 'What the dial shows at the bottom of a straight bar, zeroed at the top; mostly negative.',
  empty: 'none',
};
const SEPARATION: ShimField = {
  path: 'separation',
  label: 'Between the two dials',
  hint: 'Along the shaft, from dial to dial.',
};
const FEET: readonly ShimField[] = [
  {
    path: 'feet.front',
    label: 'To the feet by the coupling',
    hint: 'From the plane of the readings towards the motor, to its nearer screws.',
  },
  { path: 'feet.rear', label: 'To the far feet', hint: 'From the same plane to its farther screws.' },
  {
    path: 'tolerance',
    label: 'One reading may be off by',
    hint: 'A dial 0.01 mm, a feeler 0.03 mm, a ruler 0.2 mm.',
    empty: 'none',
  },
];

/** What readings come to: shims, or what is still to be read, or why they cannot be. */
export type ShimOutcome =
  | { readonly kind: 'shims'; readonly shims: MotorShims }
  | {
      readonly kind: 'missing';
      readonly missing: readonly ShimField[];
      /** What the next of them is read for. */
      readonly next: string;
      readonly some: boolean;
    }
  | { readonly kind: 'problem'; readonly sentence: string };

/**
 * The shims that readings ask for.
 *
 * @param readings - method and what was read so far
 * @param speed - rad/s, the wanted speed, for the verdict
 */
export function shimsFrom({ method, values }: ShimReadings, speed: number): ShimOutcome {
  const asked = shimGroups(method).flatMap(({ title, fields }) =>
    fields.filter(({ empty }) => empty === undefined).map((field) => ({ title, field })),
  );
  const lacking = asked.filter(({ field }) => values[field.path] === undefined);
  const [first] = lacking;
  if (first) {
    const next = `${first.title}: ${first.field.label.toLowerCase()}`;
    const missing = lacking.map(({ field }) => field);
    return { kind: 'missing', missing, next, some: lacking.length < asked.length };
  }
  const sentence = possible(values);
  if (sentence) return { kind: 'problem', sentence };
  return { kind: 'shims', shims: shimMotor(couplingReadings(method, values, speed)) };
}

type Values = ShimReadings['values'];

function possible(values: Values): string | undefined {
  const nearer = values['feet.front'] ?? 0;
  const farther = values['feet.rear'] ?? 0;
  if (farther <= nearer) return 'The far feet must be farther from the coupling than the feet by it.';
  for (const { path, label } of [FACE, SEPARATION]) {
    if ((values[path] ?? 1) <= 0) return `${label} must be greater than 0.`;
  }
  return (values['tolerance'] ?? 0) < 0 ? 'What a reading may be off by cannot be negative.' : undefined;
}

function couplingReadings(method: ShimMethod, values: Values, speed: number): CouplingReadings {
  const of = (path: string): number => values[path] ?? NaN;
  const clockOf = (name: string): ClockReadings => ({
    top: of(`${name}.top`),
    bottom: of(`${name}.bottom`),
    port: of(`${name}.port`),
    starboard: of(`${name}.starboard`),
  });
  const shared = {
    feet: { front: of('feet.front'), rear: of('feet.rear') },
    tolerance: values['tolerance'] ?? 0,
    speed,
  };
  const sag = { sag: values['sag'] ?? 0 };
  switch (method) {
    case 'rim-and-face':
      return {
        ...shared,
        ...sag,
        kind: method,
        rim: clockOf('rim'),
        face: clockOf('face'),
        faceDiameter: of('faceDiameter'),
      };
    case 'reverse-indicator':
      return {
        ...shared,
        ...sag,
        kind: method,
        onShaft: clockOf('onShaft'),
        onMotor: clockOf('onMotor'),
        separation: of('separation'),
      };
    case 'ruler-and-feeler':
      return {
        ...shared,
        kind: method,
        step: steps(values),
        gap: clockOf('gap'),
        faceDiameter: of('faceDiameter'),
      };
  }
}

function steps(values: Values) {
  const {
    'step.top': top = NaN,
    'step.port': port = NaN,
    'step.bottom': bottom,
    'step.starboard': starboard,
  } = values;
  return {
    top,
    port,
    ...(bottom === undefined ? {} : { bottom }),
    ...(starboard === undefined ? {} : { starboard }),
  };
}
