import type { ShaftLine } from '@sternline/core';
import type { LinePart } from '../charts/line-parts.js';
import type { ScreenQuantity } from '../model/units.js';

/** A number of a part: where it stands in the line, what it is, and where to measure it. */
export interface PartField {
  readonly path: string;
  readonly label: string;
  readonly quantity: ScreenQuantity;
  readonly hint: string;
  /** SI */
  readonly min: number;
  /** SI */
  readonly max: number;
  /** Whether it may be left empty, and what that means. */
  readonly empty?: string;
}

const DEGREE = Math.PI / 180;
const RPM = Math.PI / 30;

/**
 * The numbers that describe a part of a line, most important first.
 *
 * @param part - the part
 * @param line - the line it is of
 */
export function partFields(part: LinePart, line: ShaftLine): PartField[] {
  switch (part.kind) {
    case 'motor':
      return motorFields(line);
    case 'shaft':
      return shaftFields(part, line);
    case 'joint':
      return jointFields(part, line);
    case 'support':
      return supportFields(part, line);
    case 'disc':
      return discFields(part, line);
    case 'propeller':
      return [...propellerFields(), ...discFields(part, line)];
  }
}

function motorFields(line: ShaftLine): PartField[] {
  const motor: PartField[] = [
    field('motor.speedConstant', 'Speed constant', 'speed-constant', {
      hint: 'Unloaded speed over voltage; on the label, or spin it free and measure both.',
      range: [10 * RPM, 10_000 * RPM],
    }),
    field('motor.resistance', 'Winding resistance', 'resistance', {
      hint: 'Between two leads; from the maker’s sheet.',
      range: [0, 20],
    }),
    field('motor.noLoadCurrent', 'No-load current', 'current', {
      hint: 'Drawn with nothing coupled, at the working voltage.',
      range: [0, 50],
    }),
    field('motor.rotorInertia', 'Rotor inertia', 'inertia', {
      hint: 'Half the mass of the turning part times its radius squared.',
      range: [0, 0.01],
    }),
  ];
  if (!line.supply) return motor;
  return [
    ...motor,
    field('supply.voltage', 'Battery voltage', 'voltage', {
      hint: 'Under way, at the battery: 3.7 V for each lithium cell in use.',
      range: [0.5, 100],
    }),
    field('supply.resistance', 'Battery and lead resistance', 'resistance', {
      hint: 'Voltage drop over current, both measured under load.',
      range: [0, 5],
    }),
  ];
}

function shaftFields({ index }: LinePart, line: ShaftLine): PartField[] {
  const at = `shafts[${index}]`;
  const between = index > 0 && index < line.shafts.length - 1;
  return [
    field(`${at}.length`, 'Length', 'length', {
      hint: lengthHint(index, line),
      range: [0.002, 5],
    }),
    field(`${at}.outerDiameter`, 'Diameter', 'diameter', {
      hint: 'Calipers, at three places. Bushes keep their clearance.',
      range: [0.0005, 0.1],
    }),
    field(`${at}.innerDiameter`, 'Bore of the shaft', 'diameter', {
      hint: 'Inside diameter of a tube used as shaft; 0 is solid.',
      range: [0, 0.099],
    }),
    field(`${at}.elevation`, 'Slope in the side view', 'angle', {
      hint: 'Phone level or bevel gauge against the keel line; falling aft is negative.',
      range: [-80 * DEGREE, 80 * DEGREE],
    }),
    field(`${at}.plan`, 'Slope in the plan view', 'angle', {
      hint: 'Against the centre line, from above; to port is positive.',
      range: [-80 * DEGREE, 80 * DEGREE],
    }),
    ...(between
      ? [
          field(`${at}.yokeTwist`, 'Twist between its yokes', 'angle', {
            hint: 'Look along the shaft: 0 where both yokes lie in one plane.',
            range: [-180 * DEGREE, 180 * DEGREE],
          }),
        ]
      : []),
    field(`${at}.tubeBore`, 'Bore of the stern tube', 'diameter', {
      hint: 'Inside of the tube it turns in.',
      range: [0.0006, 0.2],
      empty: 'no tube',
    }),
    field(`${at}.runout`, 'Run-out at mid-length', 'diameter', {
      hint: 'Whole swing of a dial; or slips of paper under a pointer, 0.1 mm each.',
      range: [0, 0.01],
      empty: 'not measured',
    }),
  ];
}

function lengthHint(index: number, line: ShaftLine): string {
  const from = index === 0 ? 'its front end' : 'the joint’s centre';
  const to = index < line.joints.length ? 'the joint’s centre' : 'its aft end';
  return `From ${from} to ${to}. What sits in the aft half moves with that end.`;
}

function jointFields({ index }: LinePart, line: ShaftLine): PartField[] {
  const at = `joints[${index}]`;
  return [
    field(`${at}.mass`, 'Mass', 'mass', { hint: 'Weigh the whole joint with its screws.', range: [0, 2] }),
    field(`${at}.polarInertia`, 'Inertia about the shaft', 'inertia', {
      hint: 'About half its mass times its outer radius squared.',
      range: [0, 0.01],
    }),
    field(`${at}.maxAngle`, 'Largest angle allowed', 'angle', {
      hint: 'From the maker.',
      range: [1 * DEGREE, 89 * DEGREE],
      empty: 'not known',
    }),
    field(`${at}.ratedTorque`, 'Rated torque', 'torque', {
      hint: 'From the maker.',
      range: [1e-4, 100],
      empty: 'not known',
    }),
    ...(line.joints[index]?.fastener?.kind === 'set-screw' ? screwFields(at) : []),
  ];
}

function screwFields(at: string): PartField[] {
  return [
    field(`${at}.fastener.count`, 'Set screws on each shaft', 'count', {
      hint: 'Count them.',
      range: [1, 8],
    }),
    field(`${at}.fastener.seatingTorque`, 'Seated with', 'torque', {
      hint: 'Pull on the key times its length.',
      range: [1e-3, 50],
      empty: 'the usual for its size',
    }),
  ];
}

function supportFields({ shaft, index }: LinePart, line: ShaftLine): PartField[] {
  const at = `shafts[${shaft}].supports[${index}]`;
  const length = line.shafts[shaft]?.length ?? 1;
  const from = shaft === 0 ? 'the shaft’s front end' : 'the joint’s centre';
  return [
    field(`${at}.at`, 'Place along the shaft', 'length', {
      hint: `From ${from} to the middle of the bush.`,
      range: [0, orLarge(length)],
    }),
    field(`${at}.length`, 'Length', 'length', {
      hint: 'Along the shaft.',
      range: [0.0005, 0.2],
      empty: 'not given',
    }),
    field(`${at}.bore`, 'Bore', 'diameter', {
      hint: 'Calipers or drill shanks; a good fit is 0.03 to 0.05 mm over the shaft.',
      range: [0.0005, 0.11],
      empty: 'not given',
    }),
    field(`${at}.radialStiffness`, 'Stiffness sideways', 'stiffness', {
      hint: 'Push with a spring balance, read a dial: force over movement.',
      range: [1e3, 1e9],
      empty: 'rigid',
    }),
  ];
}

function discFields({ shaft, index }: LinePart, line: ShaftLine): PartField[] {
  const at = `shafts[${shaft}].discs[${index}]`;
  const length = line.shafts[shaft]?.length ?? 1;
  return [
    field(`${at}.at`, 'Place along the shaft', 'length', {
      hint: `From ${shaft === 0 ? 'the shaft’s front end' : 'the joint’s centre'} to its middle.`,
      range: [0, orLarge(length)],
    }),
    field(`${at}.mass`, 'Mass, dry', 'mass', { hint: 'Kitchen or letter scale.', range: [0, 20] }),
    field(`${at}.polarInertia`, 'Inertia about the shaft', 'inertia', {
      hint: 'A propeller: mass times the square of about a third of its radius. A disc: half its mass times radius squared.',
      range: [0, 0.1],
    }),
    field(`${at}.diametralInertia`, 'Inertia about a diameter', 'inertia', {
      hint: 'A little over half of the inertia about the shaft.',
      range: [0, 0.1],
    }),
    field(`${at}.unbalance`, 'Unbalance', 'unbalance', {
      hint: 'Mass times its distance off centre, found on knife edges.',
      range: [0, 0.01],
      empty: 'not known',
    }),
  ];
}

function propellerFields(): PartField[] {
  return [
    field('propeller.blades', 'Blades', 'count', { hint: 'Count them.', range: [1, 20] }),
    field('propeller.diameter', 'Diameter', 'length', {
      hint: 'Twice the reach of a blade from the shaft’s centre.',
      range: [0.005, 1],
    }),
    field('propeller.pitch', 'Pitch', 'length', {
      hint: 'Advance in one turn without slip; stamped on many.',
      range: [0.001, 2],
    }),
    field('propeller.wetMassFactor', 'Mass in water over dry mass', 'ratio', {
      hint: 'It carries water along; 1.25 where nothing better is known.',
      range: [1, 3],
      empty: 'the usual 1.25',
    }),
    field('propeller.wetInertiaFactor', 'Inertia in water over dry inertia', 'ratio', {
      hint: '1.25 where nothing better is known.',
      range: [1, 3],
      empty: 'the usual 1.25',
    }),
  ];
}

interface Rest {
  readonly hint: string;
  readonly range: readonly [number, number];
  readonly empty?: string;
}

function field(
  path: string,
  label: string,
  quantity: ScreenQuantity,
  { hint, range: [min, max], empty }: Rest,
): PartField {
  return { path, label, quantity, hint, min, max, ...(empty === undefined ? {} : { empty }) };
}

// While a length is being mended it is no number, and must not take the ranges of its fittings with it.
function orLarge(length: number): number {
  return Number.isFinite(length) ? length : 5;
}
