import { modeStiffening, type LineCriticalSpeed, type ShaftLine } from '@sternline/core';
import type { TableData } from '../elements/data-table.js';
import type { Units } from '../model/project.js';
import { formatFigure } from '../model/units.js';

/** One small change and by what share it moves the critical speed. */
export interface StiffeningChange {
  readonly change: string;
  /** Share of the critical speed. */
  readonly gain: number;
}

/** Size of the changes that are told: a tenth. */
const TENTH = 0.1;

/**
 * What raises the speed of a mode, best first: each part a tenth thicker or lighter.
 *
 * A shaft a tenth thicker is four tenths stiffer and two tenths heavier, dω/ω = ½ (4 strain − 2 kinetic) · 0.1; a disc a
 * tenth lighter brings ½ kinetic · 0.1.
 *
 * @param line - a checked line
 * @param critical - the mode
 */
export function stiffeningChanges(
  line: ShaftLine,
  { order, whirl, mode }: LineCriticalSpeed,
): StiffeningChange[] {
  const { shafts, discs, joints } = modeStiffening(line, { order, whirl, mode });
  const nameOf = (shaft: number) => line.shafts[shaft]?.name ?? `shaft ${shaft + 1}`;
  return [
    ...shafts.map(({ shaft, strain, kinetic }) => ({
      change: `${nameOf(shaft)} 10 % thicker`,
      gain: (4 * strain - 2 * kinetic) * (TENTH / 2),
    })),
    ...discs.map(({ shaft, disc, kinetic }) => ({
      change: `${line.shafts[shaft]?.discs[disc]?.name ?? 'disc'} 10 % lighter`,
      gain: kinetic * (TENTH / 2),
    })),
    ...joints.map(({ joint, kinetic }) => ({
      change: `joint ${joint + 1} 10 % lighter`,
      gain: kinetic * (TENTH / 2),
    })),
  ].sort((a, b) => b.gain - a.gain);
}

/** What to stiffen for a mode, in a sentence. */
export function stiffenSentence([best, second]: readonly StiffeningChange[], units: Units): string {
  if (!best || best.gain < 0.001) return 'No single part of this line raises this speed by much.';
  const words = ({ change, gain }: StiffeningChange) => `${change}, which raises it by ${share(gain, units)}`;
  const next = second && second.gain > 0.005 ? `; then ${words(second)}` : '';
  return `To raise this speed, best is the ${words(best)}${next}. Shorter spans and less overhang do more than either: try them on the drawing.`;
}

/** Every change. */
export function stiffenTable(changes: readonly StiffeningChange[], units: Units): TableData {
  return {
    caption: 'What a small change does to this speed',
    columns: ['Change', 'Raises it by'],
    rows: changes.map(({ change, gain }) => [
      change.charAt(0).toUpperCase() + change.slice(1),
      share(gain, units),
    ]),
  };
}

function share(gain: number, units: Units): string {
  return Math.abs(gain) < 0.0005 ? 'next to nothing' : formatFigure(gain, 'share', units);
}
