import type { Assessment, ShaftLine } from '@sternline/core';
import { max } from 'd3';
import type { BoundRow } from '../charts/bounds-geometry.js';
import type { SpeedChartInput, SpeedLine } from '../charts/speed-chart-geometry.js';
import type { TableData } from '../elements/data-table.js';
import type { ClearanceStudy, LineStudy } from '../model/line-study.js';
import type { Units } from '../model/project.js';
import { formatFigure, toScreen, writeNumber } from '../model/units.js';
import { ORDINALS } from './whirl-words.js';

const CYCLE = 2 * Math.PI;

/** Modes on the map; those above lie far out of reach. */
const MODES_SHOWN = 2;

/** The critical speeds as ranges, for the figure. */
export function boundRows({ bounds }: LineStudy, units: Units): BoundRow[] {
  return bounds.map(({ lower, estimate, upper }, index) => ({
    name: `${upperFirst(ORDINALS[index + 1] ?? 'higher')} whirl`,
    lower: toScreen(lower, 'speed', units),
    estimate: toScreen(estimate, 'speed', units),
    upper: toScreen(upper, 'speed', units),
  }));
}

/** The critical speeds as ranges, as a table. */
export function boundTable({ bounds }: LineStudy, units: Units): TableData {
  const speed = (value: number) => formatFigure(value, 'speed', units);
  return {
    caption: 'Critical speeds of the first order between free and firm bushes',
    columns: ['Mode', 'Bushes let it tilt', 'As long as they are', 'Bushes hold its direction'],
    rows: bounds.map(({ lower, estimate, upper }, index) => [
      ORDINALS[index + 1] ?? String(index + 1),
      speed(lower),
      speed(estimate),
      speed(upper),
    ]),
  };
}

/** What turns the shaft, as seen on the map. */
const DRIVERS = { unbalance: 'unbalance', joints: 'joints', blades: 'blades' } as const;

/** Whirl frequencies against shaft speed, with the orders that drive them and where they meet. */
export function mapInput(
  { map }: LineStudy,
  assessment: Assessment,
  { top, units }: { top: number; units: Units },
): SpeedChartInput {
  const x = Float64Array.from(map.speeds, (speed) => toScreen(speed, 'speed', units));
  const branch = (values: Float64Array, mode: number, kind: 'forward' | 'backward'): SpeedLine => ({
    name: `${mode + 1} ${kind}`,
    short: `${mode + 1} ${kind === 'forward' ? 'fwd' : 'back'}`,
    kind,
    x,
    y: Float64Array.from(values, (value) => value / CYCLE),
  });
  const end = toScreen(top, 'speed', units);
  const orders = [
    ...new Map(assessment.criticalSpeeds.map(({ order, excitation }) => [order, excitation])).entries(),
  ];
  const order = ([times, excitation]: (typeof orders)[number]): SpeedLine => ({
    name: `${times}× ${DRIVERS[excitation]}`,
    short: `${times}×`,
    kind: 'order',
    x: [0, end],
    y: [0, (times * top) / CYCLE],
  });
  const highest = max(map.forward.slice(0, MODES_SHOWN), (values) => max(values) ?? 0) ?? 1;
  return {
    lines: [
      ...orders.map(order),
      ...map.backward.slice(0, MODES_SHOWN).map((values, mode) => branch(values, mode, 'backward')),
      ...map.forward.slice(0, MODES_SHOWN).map((values, mode) => branch(values, mode, 'forward')),
    ],
    points: crossings(assessment, units),
    marks: [{ x: toScreen(assessment.speed, 'speed', units), name: 'wanted', kind: 'wanted' }],
    top: end,
    high: (1.15 * highest) / CYCLE,
  };
}

// Forward and backward lie so close that the lower of the two, which comes first, speaks for both.
function crossings({ criticalSpeeds }: Assessment, units: Units): SpeedChartInput['points'] {
  const first = new Map<string, (typeof criticalSpeeds)[number]>();
  for (const critical of criticalSpeeds) {
    const key = `${critical.order} ${critical.mode}`;
    const known = first.get(key);
    if (!known || critical.speed < known.speed) first.set(key, critical);
  }
  return [...first.values()]
    .sort((a, b) => a.speed - b.speed)
    .map(({ speed, order }) => ({
      x: toScreen(speed, 'speed', units),
      y: (order * speed) / CYCLE,
      name: `${order}× at ${writeNumber(toScreen(speed, 'speed', units), 'speed')}`,
    }));
}

/** The map's numbers. */
export function mapTable({ map }: LineStudy, units: Units): TableData {
  const hertz = (value: number | undefined) => ((value ?? 0) / CYCLE).toFixed(1);
  return {
    caption: 'Whirl frequencies against shaft speed, Hz',
    columns: [
      'Shaft speed',
      ...map.forward.flatMap((_, mode) => [`${mode + 1} backward`, `${mode + 1} forward`]),
    ],
    rows: Array.from(map.speeds, (speed, i) => [
      formatFigure(speed, 'speed', units),
      ...map.forward.flatMap((values, mode) => [hertz(map.backward[mode]?.[i]), hertz(values[i])]),
    ]),
  };
}

/** How far beyond the wall the reach is drawn, as a share of the clearance. */
const BEYOND_WALL = 1.6;

/** The whirl in the tube against its clearance. */
export function clearanceInput(
  { speeds, tubes, contact }: ClearanceStudy,
  { line, wanted, units }: { line: ShaftLine; wanted: number; units: Units },
): SpeedChartInput | undefined {
  const tightest = tubes.reduce<(typeof tubes)[number] | undefined>(
    (least, tube) => (least && least.clearance <= tube.clearance ? least : tube),
    undefined,
  );
  if (!tightest) return undefined;
  const x = Float64Array.from(speeds, (speed) => toScreen(speed, 'speed', units));
  const room = toScreen(tightest.clearance, 'length', units);
  const marks = [
    { x: toScreen(wanted, 'speed', units), name: 'wanted', kind: 'wanted' as const },
    ...(Number.isFinite(contact)
      ? [
          {
            x: toScreen(contact, 'speed', units),
            name: `touches at ${formatFigure(contact, 'speed', units)}`,
            kind: 'limit' as const,
          },
        ]
      : []),
  ];
  return {
    lines: tubes.map(({ shaft, radius }) => ({
      name: line.shafts[shaft]?.name ?? `shaft ${shaft + 1}`,
      short: 'whirl',
      kind: 'reach',
      x,
      y: Float64Array.from(radius, (value) => toScreen(value, 'length', units)),
    })),
    points: [],
    marks,
    wall: { y: room, name: `wall of the tube, ${formatFigure(tightest.clearance, 'length', units)} away` },
    top: x.at(-1) ?? 1,
    high: BEYOND_WALL * room,
  };
}

/** The same as a table. */
export function clearanceTable(
  { speeds, tubes }: ClearanceStudy,
  { line, units }: { line: ShaftLine; units: Units },
): TableData {
  return {
    caption: 'Largest sideways reach of the shaft in its tube',
    columns: ['Shaft speed', ...tubes.map(({ shaft }) => line.shafts[shaft]?.name ?? `shaft ${shaft + 1}`)],
    rows: Array.from(speeds, (speed, i) => [
      formatFigure(speed, 'speed', units),
      ...tubes.map(({ radius }) => formatFigure(radius[i] ?? 0, 'length', units)),
    ]),
  };
}

function upperFirst(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
