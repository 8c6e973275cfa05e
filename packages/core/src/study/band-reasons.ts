import { makeReason } from './make-reason.js';
import { figure } from './statement.js';
import type { AvoidBand, Reason, SpeedLimit } from './types.js';

/** Common practice: within half a margin of a band is near it. */
const NEAR = 0.5;

interface Facts {
  readonly speed: number;
  readonly bands: readonly AvoidBand[];
  readonly limit: SpeedLimit;
}

/** What the bands to avoid say of a speed. */
export function bandReasons(facts: Facts): Reason[] {
  return [...inOrNear(facts), ...aboveFirstWhirl(facts)];
}

function inOrNear({ speed, bands }: Facts): Reason[] {
  return bands.flatMap((band) => {
    const reach = (NEAR * band.margin) / (1 - band.margin);
    const severity = inBand(speed, band) ? 'inside' : near(speed, band, reach) ? 'near' : undefined;
    if (!severity) return [];
    const where = severity === 'inside' ? 'inside' : speed < band.from ? 'close below' : 'close above';
    const template = `At {speed} it runs ${where} the band of the ${band.name} ({from} to {to}).`;
    const figures = {
      speed: figure('speed', speed),
      from: figure('speed', band.from),
      to: figure('speed', band.to),
      margin: figure('share', band.margin),
    };
    const source = 'margin by common practice; critical speeds of the beam model of the whole line';
    return [makeReason('band', { severity, template, figures, source })];
  });
}

function inBand(speed: number, { from, to }: AvoidBand): boolean {
  return speed >= from && speed <= to;
}

function near(speed: number, { from, to }: AvoidBand, reach: number): boolean {
  return speed >= from * (1 - reach) && speed <= to * (1 + reach);
}

function aboveFirstWhirl({ speed, bands }: Facts): Reason[] {
  const first = firstWhirl(bands);
  if (!first || speed <= first.to) return [];
  return [
    makeReason('above-first-whirl', {
      severity: 'near',
      template: `At {speed} it runs above the ${first.name}: every start and stop passes through {from} to {to}.`,
      figures: {
        speed: figure('speed', speed),
        from: figure('speed', first.from),
        to: figure('speed', first.to),
      },
      source: 'common practice: small shaft lines run below their first whirl',
    }),
  ];
}

/** The lowest band of the first order. */
export function firstWhirl(bands: readonly AvoidBand[]): AvoidBand | undefined {
  return bands.find((band) => band.order === 1 && band.excitation === 'unbalance');
}

/** How far the first whirl is above the speed. */
export function clearance({ speed, bands, limit }: Facts): Reason[] {
  const first = firstWhirl(bands);
  if (!first || speed > limit.speed) return [];
  return [
    makeReason('margin', {
      severity: 'clear',
      template: 'The first whirl is at {critical}, {times} times the wanted {speed}.',
      figures: {
        critical: figure('speed', Math.min(...first.criticalSpeeds)),
        times: figure('ratio', Math.min(...first.criticalSpeeds) / speed),
        speed: figure('speed', speed),
      },
      source: 'critical speeds of the beam model of the whole line',
    }),
  ];
}
