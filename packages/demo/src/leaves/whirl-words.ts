import type { Assessment, Excitation, LineCriticalSpeed, ShaftLine } from '@sternline/core';
import { lineParts } from '../charts/line-parts.js';
import type { ModeMark } from '../charts/mode-geometry.js';
import type { Units } from '../model/project.js';
import { formatFigure } from '../model/units.js';

/** What drives a whirl, in words. */
export const EXCITATION_NAMES: Readonly<Record<Excitation, string>> = {
  unbalance: 'unbalance',
  joints: 'the joints',
  blades: 'the blades',
};

/** Modes by their number. */
export const ORDINALS = ['', 'first', 'second', 'third', 'fourth'];

/** The lowest dozen: what lies above them is far beyond the motor. */
export function modesToShow({ criticalSpeeds }: Assessment): LineCriticalSpeed[] {
  return [...criticalSpeeds].sort((a, b) => a.speed - b.speed).slice(0, 12);
}

/** The first whirl and what reaches it earlier, in a sentence. */
export function whirlSentence({ criticalSpeeds }: Assessment, units: Units): string {
  const lowest = (excitation: Excitation) =>
    Math.min(...criticalSpeeds.filter((found) => found.excitation === excitation).map(({ speed }) => speed));
  const first = lowest('unbalance');
  if (!Number.isFinite(first)) return 'No whirl driven by unbalance was found.';
  const opening = `Unbalance sets the line whirling at ${formatFigure(first, 'speed', units)}.`;
  const sooner = (['joints', 'blades'] as const)
    .map((excitation) => ({ excitation, speed: lowest(excitation) }))
    .filter(({ speed }) => speed < first)
    .map(
      ({ excitation, speed }) => `${EXCITATION_NAMES[excitation]} at ${formatFigure(speed, 'speed', units)}`,
    );
  if (sooner.length === 0) return opening;
  return `${opening} It can be set off sooner: by ${sooner.join(', by ')}, since they push more than once a turn.`;
}

/** What holds and what hangs on the line, along its developed length. */
export function modeMarks(line: ShaftLine): ModeMark[] {
  const starts = line.shafts.map((_, index) =>
    line.shafts.slice(0, index).reduce((sum, shaft) => sum + shaft.length, 0),
  );
  return lineParts(line).flatMap((part, index): ModeMark[] => {
    if (part.kind === 'motor' || part.kind === 'shaft') return [];
    const station = (starts[part.shaft] ?? 0) + part.at;
    const kind = part.kind === 'propeller' ? 'disc' : part.kind;
    return [{ kind, name: part.name, short: String(index + 1), station }];
  });
}
