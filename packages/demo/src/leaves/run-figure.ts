import type { OrderTrack, ResonanceSighting } from '@sternline/core';
import type { SpeedChartInput, SpeedLine } from '../charts/speed-chart-geometry.js';
import type { TableData } from '../elements/data-table.js';
import { runLines } from '../model/run-lines.js';
import type { RunLine } from '../model/run-lines.js';
import { shortFigure } from '../model/short-figure.js';

const RPM = Math.PI / 30;
const KINDS: readonly SpeedLine['kind'][] = ['forward', 'backward', 'reach'];

/** What stands in the figure beside the orders. */
interface Beside {
  readonly resonances: readonly ResonanceSighting[];
  /** rad/s */
  readonly criticals: readonly { readonly speed: number; readonly name: string }[];
}

/**
 * The figure of order amplitudes against shaft speed.
 *
 * @param track - orders through the run
 * @param beside - what rang, and what is predicted
 * @returns what the chart draws, its numbers as a table, and the name of its upward axis
 */
export function runFigure(
  track: OrderTrack,
  { resonances, criticals }: Beside,
): { readonly input: SpeedChartInput; readonly table: TableData; readonly upward: string } {
  const lines = runLines(track).filter(({ speed }) => speed.length > 1);
  const top = (1.05 * track.speed.reduce((most, value) => Math.max(most, value), 0)) / RPM;
  const high =
    1.1 * lines.flatMap(({ amplitude }) => amplitude).reduce((most, value) => Math.max(most, value), 0);
  return {
    input: {
      lines: lines.map(speedLine),
      points: resonances.flatMap((one) => pointsOf(one, lines)),
      marks: criticals.map(({ speed, name }) => ({ x: speed / RPM, name, kind: 'limit' })),
      top,
      high: high || 1,
    },
    table: tableOf(lines),
    upward: `peak amplitude, ${lines[0]?.unit ?? ''}`,
  };
}

/** Such as `4 600 rpm`. */
export function writeRpm(speed: number): string {
  return `${String(Math.round(speed / 10) * 10).replace(/\B(?=(\d{3})+$)/g, '\u202f')} rpm`;
}

export function writeAmplitude(value: number): string {
  return shortFigure(value, 2);
}

function speedLine({ order, speed, amplitude }: RunLine, index: number): SpeedLine {
  return {
    name: `${order}×`,
    short: `${order}×`,
    kind: KINDS[index % KINDS.length] ?? 'forward',
    x: speed.map((value) => value / RPM),
    y: amplitude,
  };
}

function pointsOf(
  { frequency, orders }: ResonanceSighting,
  lines: readonly RunLine[],
): SpeedChartInput['points'] {
  return orders.flatMap((order) => {
    const line = lines.find((one) => one.order === order);
    const speed = (2 * Math.PI * frequency) / order;
    const nearest = line?.speed.reduce((best, value, index) => {
      return Math.abs(value - speed) < Math.abs((line.speed[best] ?? Infinity) - speed) ? index : best;
    }, 0);
    const y = nearest === undefined ? undefined : line?.amplitude[nearest];
    return y === undefined ? [] : [{ x: speed / RPM, y, name: `${order}×` }];
  });
}

function tableOf(lines: readonly RunLine[]): TableData {
  const longest = lines.reduce<RunLine | undefined>(
    (most, line) => (line.speed.length > (most?.speed.length ?? 0) ? line : most),
    undefined,
  );
  return {
    caption: 'Peak amplitude of each order against shaft speed',
    columns: ['Speed, rpm', ...lines.map(({ order, unit }) => `${order}×, ${unit}`)],
    rows: (longest?.speed ?? []).map((speed) => [
      String(Math.round(speed / RPM)),
      ...lines.map((line) => {
        const index = line.speed.findIndex((value) => Math.abs(value - speed) < 1e-9 * speed);
        return index < 0 ? '–' : shortFigure(line.amplitude[index] ?? NaN);
      }),
    ]),
  };
}
