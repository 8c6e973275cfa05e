import type { Assessment, AvoidBand, ShaftLine } from '@sternline/core';
import { group } from 'd3';
import type { RulerBand, RulerLevel } from '../charts/speed-ruler-geometry.js';
import type { OrderLevel } from '../elements/events.js';
import type { Units } from '../model/project.js';
import { formatFigure, toScreen } from '../model/units.js';
import { bandThrottle } from './running-words.js';

const DRIVEN: Readonly<Record<AvoidBand['excitation'], string>> = {
  unbalance: 'unbalance',
  joints: 'joints',
  blades: 'blades',
};

const MODES: Readonly<Record<number, string>> = { 2: '2nd whirl', 3: '3rd whirl', 4: '4th whirl' };

/** Bands of an assessment as the ruler takes them. */
export function rulerBands(line: ShaftLine, { avoidBands }: Assessment, units: Units): RulerBand[] {
  return avoidBands.map((band) => ({
    from: toScreen(band.from, 'speed', units),
    to: toScreen(band.to, 'speed', units),
    order: band.order,
    label:
      band.motion === 'twist'
        ? `${band.order}× twist`
        : (MODES[band.mode] ?? `${band.order}× ${DRIVEN[band.excitation]}`),
    ...(line.motor && line.supply && line.propeller ? { note: bandThrottle(line, band) } : {}),
    marks: band.criticalSpeeds.map((speed) => toScreen(speed, 'speed', units)),
  }));
}

/** Levels by trial, with those of a newer analysis in the place of the old. */
export function withLevels(
  known: ReadonlyMap<string, readonly OrderLevel[]>,
  levels: readonly OrderLevel[],
): ReadonlyMap<string, readonly OrderLevel[]> {
  return new Map([...known, ...group(levels, ({ trialId }) => trialId)]);
}

/** Measured levels as the ruler takes them. */
export function rulerLevels(levels: readonly OrderLevel[], units: Units): RulerLevel[] {
  return levels.map(({ speed, order, amplitude, unit, seen }) => ({
    speed: toScreen(speed, 'speed', units),
    order,
    amplitude,
    unit,
    seen,
  }));
}

/** What stands at the limit on the ruler. */
export function limitLabel({ speedLimit, avoidBands }: Assessment, units: Units): string {
  if (!Number.isFinite(speedLimit.speed)) return '';
  const band = avoidBands.find(
    ({ from, excitation }) => excitation === 'unbalance' && from === speedLimit.speed,
  );
  const reason = band ? `: ${formatFigure(band.margin, 'share', units)} under the first whirl` : '';
  return `limit ${formatFigure(speedLimit.speed, 'speed', units)}${reason}`;
}
