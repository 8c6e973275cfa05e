import type { AvoidBand, RunningPoint, ShaftLine } from '@sternline/core';
import type { TableData } from '../elements/data-table.js';
import type { Units } from '../model/project.js';
import { throttleAt, type Running } from '../model/running.js';
import { formatFigure } from '../model/units.js';

const PART_NAMES = {
  motor: 'the motor (its speed constant, resistance and no-load current)',
  supply: 'the battery (its voltage and resistance)',
  propeller: 'the propeller (its blades, diameter and pitch)',
} as const;

/** How fast the motor drives the loaded shaft, or what to enter first. */
export function runningSentence(running: Running, speed: number, units: Units): string {
  switch (running.kind) {
    case 'problem':
      return running.sentence;
    case 'missing':
      return `Enter ${listed(running.missing.map((part) => PART_NAMES[part]))}, and this tells the speed under load, the current, and the bands as throttle.`;
    case 'runs': {
      const { full, wanted } = running;
      const opening = `At full throttle the motor turns the loaded shaft at ${formatFigure(full.speed, 'speed', units)} and draws ${formatFigure(full.current, 'current', units)}.`;
      const asked = formatFigure(speed, 'speed', units);
      return wanted
        ? `${opening} The wanted ${asked} takes ${throttleWords(wanted.throttle)} throttle and ${formatFigure(wanted.supplyCurrent, 'current', units)} from the battery; ${formatFigure(wanted.motorHeat, 'power', units)} stay in the motor as heat.`
        : `${opening} It does not reach the wanted ${asked}: a smaller propeller, or more volts, would.`;
    }
  }
}

function listed(names: readonly string[]): string {
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1) ?? ''}`;
}

/** A throttle as a share of the stick's way. */
export function throttleWords(throttle: number | undefined): string {
  return throttle === undefined ? 'beyond full' : `${Math.round(throttle * 100)}\u00a0%`;
}

/** The bands to avoid as throttle. */
export function bandThrottle(line: ShaftLine, { from, to }: Pick<AvoidBand, 'from' | 'to'>): string {
  const low = throttleAt(line, from);
  const high = throttleAt(line, to);
  if (low === undefined) return 'beyond full throttle';
  if (high === undefined) return `${throttleWords(low)} throttle and up`;
  return `${throttleWords(low)} to ${throttleWords(high)} throttle`;
}

/** Running points beside each other. */
export function runningTable(
  points: readonly { readonly name: string; readonly point: RunningPoint }[],
  units: Units,
): TableData {
  const row = (name: string, write: (point: RunningPoint) => string) => [
    name,
    ...points.map(({ point }) => write(point)),
  ];
  return {
    caption: 'Under load, held at the quay',
    columns: ['Figure', ...points.map(({ name }) => name)],
    rows: [
      row('Shaft speed', ({ speed }) => formatFigure(speed, 'speed', units)),
      row('Throttle', ({ throttle }) => throttleWords(throttle)),
      row('Current in the motor', ({ current }) => formatFigure(current, 'current', units)),
      row('Current from the battery', ({ supplyCurrent }) => formatFigure(supplyCurrent, 'current', units)),
      row('Torque on the shaft', ({ torque }) => formatFigure(torque, 'torque', units)),
      row('Power on the shaft', ({ powerOut }) => formatFigure(powerOut, 'power', units)),
      row('Heat in the motor', ({ motorHeat }) => formatFigure(motorHeat, 'power', units)),
      row('Share of power that reaches the shaft', ({ efficiency }) =>
        formatFigure(efficiency, 'share', units),
      ),
    ],
  };
}

/** Bands to avoid by speed and by throttle. */
export function throttleTable(line: ShaftLine, bands: readonly AvoidBand[], units: Units): TableData {
  return {
    caption: 'Bands to avoid, as throttle',
    columns: ['Band', 'Speed', 'Throttle'],
    rows: bands.map((band) => [
      `${band.name.charAt(0).toUpperCase()}${band.name.slice(1)}`,
      `${formatFigure(band.from, 'speed', units)} to ${formatFigure(band.to, 'speed', units)}`,
      bandThrottle(line, band).replace(' throttle', ''),
    ]),
  };
}
