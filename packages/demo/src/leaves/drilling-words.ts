import type { TableData } from '../elements/data-table.js';
import type { DrillingMark } from '../model/drilling-marks.js';
import type { DrillingPlan } from '../model/measures.js';
import type { Units } from '../model/project.js';
import { formatFigure } from '../model/units.js';

interface Known {
  /** Whether the tube's axis is known in heights and in offsets. */
  readonly axis: boolean;
  /** At how many joints the line bends. */
  readonly bends: number;
  readonly plan: DrillingPlan;
  readonly marks: readonly DrillingMark[];
}

/** Where to drill, in a sentence, or what to enter first. */
export function drillingSentence({ axis, bends, plan, marks }: Known, units: Units): string {
  if (bends !== 1 && bends !== 2) {
    return 'Marks to drill come from measured points, which serve a line that bends at one joint or two.';
  }
  if (!axis) {
    return 'Enter the measured or planned points of the tube’s axis above, and this gives the marks to drill through bulkheads and hull.';
  }
  const [first] = marks;
  if (!first) {
    return plan.hull
      ? 'The tube’s axis does not come out of the hull’s bottom as entered: complete its station and height.'
      : 'Enter where the bulkheads stand, and where the tube leaves the hull.';
  }
  const more = marks.length > 1 ? ` ${marks.length - 1} more below.` : '';
  const hole = first.hole
    ? `: ${first.hole.semiMajor - first.hole.semiMinor < 2e-5 ? 'a round hole' : 'an oval'} ${holeSize(first, units)}`
    : '; enter the tube’s diameter for the size of the hole';
  return `${nameOf(first, units)}: mark ${placeWords(first, units)}${hole}.${more}`;
}

/** Every mark. */
export function drillingTable(marks: readonly DrillingMark[], units: Units): TableData {
  const length = (value: number) => formatFigure(value, 'length', units);
  return {
    caption: 'Marks to drill, all from the keel line, the centre line and the datum',
    columns: ['Where', 'Aft', 'Height', 'To port', 'Hole', 'Axis off square'],
    rows: marks.map((mark) => [
      nameOf(mark, units),
      length(mark.mark.at),
      length(mark.mark.height),
      length(mark.mark.offset),
      holeSize(mark, units),
      formatFigure(mark.mark.incidence, 'angle', units),
    ]),
  };
}

/** The hole's length and width. */
export function holeSize({ hole }: DrillingMark, units: Units): string {
  if (!hole) return 'tube’s diameter missing';
  const length = (value: number) => formatFigure(Math.round(value * 2e5) / 1e5, 'length', units);
  return `${length(hole.semiMajor)} × ${length(hole.semiMinor)}`;
}

/** What is drilled. */
export function nameOf({ kind, mark }: DrillingMark, units: Units): string {
  return kind === 'hull' ? 'Hull’s bottom' : `Bulkhead at ${formatFigure(mark.at, 'length', units)}`;
}

/** Height and offset of a mark, in words. */
export function placeWords({ mark }: DrillingMark, units: Units): string {
  const { height, offset } = mark;
  const side = offset >= 0 ? 'port' : 'starboard';
  const across =
    Math.abs(offset) < 1e-5
      ? 'on the centre line'
      : `${formatFigure(Math.abs(offset), 'length', units)} to ${side}`;
  const level = height >= 0 ? 'above' : 'below';
  return `${formatFigure(Math.abs(height), 'length', units)} ${level} the keel line, ${across}`;
}
