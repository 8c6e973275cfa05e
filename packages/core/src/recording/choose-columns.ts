import { RecordingError } from './recording-error.js';
import { chooseAxes, type AxesChoice, type AxisChoice } from './choose-axes.js';
import { chooseSensor, type SensorChoice } from './choose-sensor.js';
import { chooseTime, type TimeChoice } from './choose-time.js';
import { columnFacts, type ColumnFacts } from './column-facts.js';
import { refuseColumns } from './refuse-columns.js';
import { type Table } from './text-table.js';
import { parseUnit, type Unit } from './units.js';
import {
  type ColumnChoice,
  type ColumnReading,
  type ReadDelimitedOptions,
  type SensorReading,
  type TextHints,
} from './types.js';

/** Which columns to read, as what, and why. */
export interface Plan extends AxesChoice {
  readonly time: TimeChoice | undefined;
  readonly sensor: SensorChoice | undefined;
  readonly sensors: readonly SensorReading[];
  /** The axes' unit as the file or the caller states it. */
  readonly unit: Unit | undefined;
  readonly readings: readonly ColumnReading[];
}

/**
 * Decides what each column of a table is.
 *
 * @param table - the table
 * @param options - what the caller knows better
 * @throws RecordingError where the table holds no acceleration, or the columns asked for are not there
 */
export function chooseColumns(table: Table, options: TextHints): Plan {
  const sensor = chooseSensor(table, options.sensor);
  const rows = sensor
    ? table.preview.filter((row) => (row[sensor.index] ?? '').trim() === sensor.name)
    : table.preview;
  const columns = columnFacts(table, rows).filter(({ index }) => index !== sensor?.index);
  const overruled = overrule(columns, options.columns);
  const time =
    overruled.time ??
    chooseTime(columns.filter((column) => !overruled.axes.some((axis) => axis.column === column)));
  const rest = columns.filter((column) => column !== time?.column);
  const wanted = wantedQuantity(options.sensor ?? options.fileSays, sensor);
  const found =
    overruled.axes.length > 0
      ? chosenAxes(overruled.axes, wanted)
      : chooseAxes(rest, {
          quantity: wanted,
          oneSensor: sensor !== undefined || options.fileSays !== undefined,
        });
  if (!found) throw refuseColumns({ table, columns, wanted, hasTime: time !== undefined });
  const unit = statedUnit({ axes: found.axes, table, options });
  const plan = { ...found, time, sensor, unit, sensors: sensor?.sensors ?? wideSensors(rest) };
  return { ...plan, readings: describeColumns(table, columns, plan) };
}

function wantedQuantity(
  asked: string | undefined,
  sensor: SensorChoice | undefined,
): 'acceleration' | 'rotation' {
  if (sensor) return sensor.quantity === 'rotation' ? 'rotation' : 'acceleration';
  return asked !== undefined && /^(rot|gyr|turn)/i.test(asked) ? 'rotation' : 'acceleration';
}

function chosenAxes(axes: readonly AxisChoice[], quantity: 'acceleration' | 'rotation'): AxesChoice {
  const turning = axes.every(({ column }) => column.header.quantity === 'rotation');
  return {
    axes,
    quantity: turning ? 'rotation' : quantity,
    gravityRemoved: axes.some(({ column }) => column.header.gravityRemoved),
  };
}

interface Overruled {
  readonly time: TimeChoice | undefined;
  readonly axes: readonly AxisChoice[];
}

function overrule(columns: readonly ColumnFacts[], choice: ColumnChoice | undefined): Overruled {
  if (!choice) return { time: undefined, axes: [] };
  const given = { reason: 'chosen by the caller', confidence: 1 };
  const axes = (['x', 'y', 'z'] as const).flatMap((role) => {
    const asked = choice[role];
    return asked === undefined ? [] : [{ column: pick(columns, asked), role, ...given }];
  });
  return {
    time: choice.time === undefined ? undefined : { column: pick(columns, choice.time), ...given },
    axes,
  };
}

function pick(columns: readonly ColumnFacts[], asked: string | number): ColumnFacts {
  const wanted = String(asked).trim().toLowerCase();
  const column =
    typeof asked === 'number'
      ? columns.find(({ index }) => index === asked)
      : columns.find(({ text }) => text.trim().toLowerCase() === wanted);
  if (column) return column;
  const names = columns.map(({ index, text }) => (text === '' ? String(index) : text));
  throw new RecordingError('readDelimited', {
    code: 'no-such-column',
    found: `there is no column "${wanted}"; the columns are ${names.slice(0, 12).join(', ')}.`,
    remedy: 'Name one of these, or give its place counted from 0.',
  });
}

function statedUnit({
  axes,
  table,
  options,
}: {
  axes: readonly AxisChoice[];
  table: Table;
  options: ReadDelimitedOptions;
}): Unit | undefined {
  const given = options.columns?.unit;
  if (given !== undefined) {
    const unit = parseUnit(given);
    if (unit && unit.quantity !== 'other' && unit.quantity !== 'time') return unit;
    throw new RecordingError('readDelimited', {
      code: 'unknown-unit',
      found: `the unit "${given}" is not known.`,
      remedy: 'Give m/s², g, mg, cm/s², ft/s², rad/s or deg/s.',
    });
  }
  const unit = axes.map(({ column }) => column.header.unit).find((candidate) => candidate !== undefined);
  const stated = table.stated.unit === undefined ? undefined : parseUnit(table.stated.unit);
  return unit?.quantity === 'other' ? stated : (unit ?? stated);
}

function wideSensors(columns: readonly ColumnFacts[]): SensorReading[] {
  const quantities = new Set(
    columns.map(({ header }) =>
      header.quantity === 'unsaid' && header.axis ? 'acceleration' : header.quantity,
    ),
  );
  return (['acceleration', 'rotation'] as const)
    .filter((name) => quantities.has(name))
    .map((name) => ({ name, quantity: name }));
}

function describeColumns(
  table: Table,
  columns: readonly ColumnFacts[],
  { time, sensor, axes, unit }: Pick<Plan, 'time' | 'sensor' | 'axes' | 'unit'>,
): ColumnReading[] {
  const magnitudeReason = magnitudeTest(axes);
  return table.headers.map((header, index) => {
    if (index === sensor?.index) {
      return {
        index,
        header,
        role: 'sensor',
        unit: '',
        reason: `tells the sensors apart; ${sensor.name} is read`,
        confidence: 0.95,
      };
    }
    const column = columns.find((candidate) => candidate.index === index);
    if (column && column === time?.column) {
      return {
        index,
        header,
        role: 'time',
        unit: column.header.unit?.name ?? '',
        reason: time.reason,
        confidence: time.confidence,
      };
    }
    const axis = axes.find((candidate) => candidate.column === column);
    if (axis)
      return {
        index,
        header,
        role: axis.role,
        unit: unit?.name ?? '',
        reason: axis.reason,
        confidence: axis.confidence,
      };
    const magnitude = column ? magnitudeReason(column) : undefined;
    if (magnitude !== undefined)
      return { index, header, role: 'magnitude', unit: '', reason: magnitude, confidence: 0.9 };
    return { index, header, role: 'unused', unit: '', reason: unusedReason(column), confidence: 0.8 };
  });
}

function unusedReason(column: ColumnFacts | undefined): string {
  if (!column || column.filled === 0) return 'holds no figures';
  if (column.header.quantity === 'time') return 'a second time column, left aside';
  if (column.header.quantity === 'unsaid') return 'neither a time nor an axis by its name';
  return column.header.quantity === 'acceleration'
    ? 'an axis of a second set'
    : `holds another quantity (${column.header.quantity})`;
}

function magnitudeTest(axes: readonly AxisChoice[]): (column: ColumnFacts) => string | undefined {
  return (column) => {
    if (column.header.quantity === 'magnitude') return 'named as the magnitude of the axes';
    if (axes.length < 2 || column.filled < 0.3) return undefined;
    const fits = Array.from(column.values).filter((value, i) => {
      const size = Math.hypot(...axes.map((axis) => axis.column.values[i] ?? NaN));
      return Math.abs(value - size) <= 0.01 * size + 1e-9;
    }).length;
    return fits > 0.8 * column.values.length * column.filled
      ? 'equals the root of the sum of the axes’ squares'
      : undefined;
  };
}
