import type {
  CalibratedParameter,
  LineCalibration,
  MeasuredResonance,
  ResonanceMatch,
  ShaftLine,
} from '@sternline/core';
import type { TableData } from '../elements/data-table.js';
import { judgeLine } from '../model/judge-line.js';
import type { Units } from '../model/project.js';
import { formatFigure } from '../model/units.js';

/** What the fit comes to, in a sentence or two. */
export function calibrationSentence(
  { supported, reasons, designed, built }: LineCalibration,
  speed: number,
  units: Units,
): string {
  if (!supported) return `The line stays as designed. ${reasons[0] ?? ''}`.trim();
  const [before, after] = [designed, built].map((line) => firstWhirl(line, speed));
  if (before === undefined || after === undefined) return 'The bushes hold otherwise than designed.';
  const change = after / before - 1;
  const way =
    Math.abs(change) < 0.005
      ? 'stays where it was'
      : `moves ${change > 0 ? 'up' : 'down'} from ${formatFigure(before, 'speed', units)} to ${formatFigure(after, 'speed', units)}`;
  return `Fitted to what was measured, the first whirl ${way}.`;
}

function firstWhirl(line: LineCalibration['built'], speed: number): number | undefined {
  const speeds = judgeLine(line, speed)
    .assessment?.criticalSpeeds.filter(({ excitation }) => excitation === 'unbalance')
    .map((found) => found.speed);
  return speeds && speeds.length > 0 ? Math.min(...speeds) : undefined;
}

/** What was learnt of the bushes, in plain words: softer, firmer, or not to be told. */
export function bushWords(
  { kind, moved, dataShare, supports }: CalibratedParameter,
  { shafts }: ShaftLine,
): string {
  const names = [...new Set(supports.map(({ shaft }) => shafts[shaft]?.name ?? ''))].join(', ');
  const what =
    kind === 'radial'
      ? `How far the bushes of the ${names} give sideways`
      : `How firmly the bushes of the ${names} hold its slope`;
  if (dataShare < TOLD) return `${what} cannot be told from this: it stays as assumed.`;
  const way =
    Math.abs(moved) < 0.25 ? 'as assumed' : moved < 0 ? 'softer than assumed' : 'firmer than assumed';
  const sure = dataShare < 0.9 ? ', as far as this can tell' : '';
  return `${what}: ${way}${sure}.`;
}

/** Share of what is known of a stiffness that must come from the measurement to speak of it. */
const TOLD = 0.2;

/** Each resonance as measured, as the line was designed, and as it is fitted. */
export function matchTable(
  { matches }: LineCalibration,
  resonances: readonly MeasuredResonance[],
  units: Units,
): TableData {
  return {
    caption: 'What was measured against the line',
    columns: ['Resonance', 'Mode', 'Measured', 'As designed', 'As fitted'],
    rows: matches.map((match) => matchRow(match, resonances[match.resonance], units)),
  };
}

function matchRow(
  { mode, measured, error, designed, built }: ResonanceMatch,
  resonance: MeasuredResonance | undefined,
  units: Units,
): string[] {
  const quantity = resonance?.speed === undefined ? 'frequency' : 'speed';
  const write = (value: number) => formatFigure(value, quantity, units);
  return [
    resonance ? resonanceName(resonance) : '',
    String(mode),
    `${write(measured)} ± ${write(Number(error.toPrecision(2)))}`,
    write(designed),
    write(built),
  ];
}

/** How a resonance was found, in a word or two. */
export function resonanceName(resonance: MeasuredResonance): string {
  const medium = resonance.medium === 'air' ? 'in air' : 'in water';
  if (resonance.speed === undefined) return `tap test ${medium}`;
  return `run-up ${medium}, ${resonance.order ?? 1}×`;
}
