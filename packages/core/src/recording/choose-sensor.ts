import { RecordingError } from './recording-error.js';
import { columnFacts } from './column-facts.js';
import { type Table } from './text-table.js';
import { type SensorReading } from './types.js';

/** The rows to read where a column tells which sensor each row belongs to. */
export interface SensorChoice {
  readonly index: number;
  readonly name: string;
  readonly sensors: readonly SensorReading[];
  readonly quantity: SensorReading['quantity'];
}

const MOST_SENSORS = 24;

/**
 * Finds the column that names each row's sensor, and the sensor to read.
 *
 * @param table - the table
 * @param wanted - name or quantity that is asked for; acceleration where absent
 * @returns undefined where rows belong to one sensor alone
 * @throws RecordingError where the sensor asked for is not there
 */
export function chooseSensor(table: Table, wanted: string | undefined): SensorChoice | undefined {
  const index = sensorColumn(table);
  if (index === undefined) return undefined;
  const names = [...new Set(table.preview.map((row) => (row[index] ?? '').trim()))].filter(
    (name) => name !== '',
  );
  const sensors = names.slice(0, MOST_SENSORS).map((name) => ({ name, quantity: quantityOf(name) }));
  const asked = (wanted ?? 'acceleration').toLowerCase();
  const found =
    sensors.find(({ name }) => name.toLowerCase() === asked) ??
    sensors.find(({ quantity }) => quantity === asked) ??
    (sensors.length === 1 && wanted === undefined ? sensors[0] : undefined);
  if (!found) throw unknownSensor(names, wanted);
  return { index, name: found.name, sensors, quantity: found.quantity };
}

function sensorColumn(table: Table): number | undefined {
  const facts = columnFacts(table, table.preview);
  const worded = facts.filter(({ filled, index }) => {
    const cells = table.preview.map((row) => (row[index] ?? '').trim());
    const words = cells.filter((cell) => /\p{L}{2}/u.test(cell)).length;
    return filled < 0.2 && words > 0.8 * cells.length && new Set(cells).size <= MOST_SENSORS;
  });
  const named = facts.find(
    ({ header, distinct, index }) =>
      header.quantity === 'sensor' &&
      (worded.some((column) => column.index === index) || (distinct > 1 && distinct < 9)),
  );
  const telling = worded.find(({ index }) =>
    table.preview.some((row) => quantityOf(row[index] ?? '') !== 'other'),
  );
  return named?.index ?? telling?.index;
}

function quantityOf(name: string): SensorReading['quantity'] {
  if (/acc|beschl|acel|versnel|g-?force|linear|^lis/i.test(name)) return 'acceleration';
  return /gyr|giro|rotat|dreh|angular|omega/i.test(name) ? 'rotation' : 'other';
}

function unknownSensor(names: readonly string[], wanted: string | undefined): RecordingError {
  const list = names.slice(0, 8).join(', ');
  return new RecordingError('readDelimited', {
    code: 'no-such-sensor',
    found: `the rows belong to these sensors: ${list}; ${wanted === undefined ? 'none is known as an acceleration' : `none is "${wanted}"`}.`,
    remedy: 'Give options.sensor one of these names.',
  });
}
