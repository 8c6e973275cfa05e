import type { AlignmentFigure, AlignmentVerdict, InBothPlanes, MotorShims } from '@sternline/core';
import type { TableData } from '../elements/data-table.js';
import type { Units } from '../model/project.js';
import type { ShimOutcome } from '../model/shim-readings.js';
import { formatFigure, type ScreenQuantity } from '../model/units.js';

/** m: a shim thinner than this is not worth cutting. Common practice: the thinnest foil in a shed. */
const THINNEST = 0.00002;

/** What to shim and by how much, or what is still to be read. */
export function shimSentence(outcome: ShimOutcome, units: Units): string {
  switch (outcome.kind) {
    case 'problem':
      return outcome.sentence;
    case 'missing':
      return outcome.some
        ? `Still to be read: ${outcome.missing.length} ${outcome.missing.length === 1 ? 'figure' : 'figures'}, the next of them “${outcome.next}”.`
        : 'Read the coupling at four places of the clock, and this says what to put under which foot of the motor.';
    case 'shims': {
      const { front, rear } = outcome.shims.feet;
      return `By the coupling: ${moveWords(front, units)}. At the far feet: ${moveWords(rear, units)}.`;
    }
  }
}

/** How to move one pair of feet. */
export function moveWords({ vertical, horizontal }: InBothPlanes, units: Units): string {
  const size = (value: number) => formatFigure(roundTo(Math.abs(value)), 'length', units);
  const upright =
    Math.abs(vertical) < THINNEST
      ? 'height as it is'
      : `${vertical > 0 ? 'raise by' : 'lower by'} ${size(vertical)}`;
  const across =
    Math.abs(horizontal) < THINNEST
      ? 'sideways as it is'
      : `move ${size(horizontal)} to ${horizontal > 0 ? 'port' : 'starboard'}`;
  return `${upright}, ${across}`;
}

// A hundredth of a millimetre is as fine as shims are cut.
function roundTo(value: number): number {
  return Math.round(value * 1e5) / 1e5;
}

const GRADES = {
  excellent: 'in line to the finer limits',
  acceptable: 'in line well enough',
  outside: 'not in line',
} as const;

/** How the motor stands against the limits of its speed. */
export function alignmentWords(verdict: AlignmentVerdict, speed: number, units: Units): string {
  const figures = [
    verdict.offset && figureWords('offset', verdict.offset, 'length', units),
    verdict.angularity && figureWords('angle', verdict.angularity, 'angle', units),
  ].filter((words) => words !== undefined);
  const basis =
    verdict.basis === 'beyond the table'
      ? ' The table ends at 6 000 rpm; beyond it the limits shrink as speed grows.'
      : '';
  return `At ${formatFigure(speed, 'speed', units)} the motor as read is ${GRADES[verdict.grade]}: ${figures.join('; ')}.${basis}`;
}

function figureWords(
  name: string,
  { value, acceptable }: AlignmentFigure,
  quantity: ScreenQuantity,
  units: Units,
): string {
  const write = (si: number) =>
    quantity === 'angle'
      ? `${((si * 180) / Math.PI).toFixed(2)}°`
      : formatFigure(roundTo(si), quantity, units);
  return `${name} ${write(value)}, at most ${write(acceptable)}`;
}

/** Every figure with its tolerance. */
export function shimTable({ offset, angularity, feet, tolerance }: MotorShims, units: Units): TableData {
  const length = (value: number) => formatFigure(roundTo(value), 'length', units);
  const angle = (value: number) => `${((value * 180) / Math.PI).toFixed(2).replace('-', '−')}°`;
  const row = (
    name: string,
    value: InBothPlanes,
    { off, write }: { off: InBothPlanes; write: (si: number) => string },
  ) => [
    name,
    `${write(value.vertical)} ± ${write(off.vertical)}`,
    `${write(value.horizontal)} ± ${write(off.horizontal)}`,
  ];
  return {
    caption: 'The motor against the shaft it drives, and how to move its feet',
    columns: ['Figure', 'Up', 'To port'],
    rows: [
      row('Offset at the coupling', offset, { off: tolerance.offset, write: length }),
      row('Angle, rising or going to port aft', angularity, { off: tolerance.angularity, write: angle }),
      row('Move the feet by the coupling', feet.front, { off: tolerance.front, write: length }),
      row('Move the far feet', feet.rear, { off: tolerance.rear, write: length }),
    ],
  };
}

/** What the readings contradict themselves by, where that is more than they may be off. */
export function closureWords({ closure }: MotorShims, tolerance: number, units: Units): string {
  const allowed = Math.max(4 * tolerance, 0.00005);
  if (closure <= allowed) return '';
  return `Top and bottom together should come to the same as port and starboard together; these differ by ${formatFigure(roundTo(closure), 'length', units)}. Read them again, turning both shafts together.`;
}
