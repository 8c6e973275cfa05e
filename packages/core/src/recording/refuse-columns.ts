import { RecordingError } from './recording-error.js';
import { type ColumnFacts } from './column-facts.js';
import { type Table } from './text-table.js';

interface Refused {
  readonly table: Table;
  readonly columns: readonly ColumnFacts[];
  readonly wanted: 'acceleration' | 'rotation';
  readonly hasTime: boolean;
}

/** The refusal of a table that holds nothing to read, by what it seems to be instead. */
export function refuseColumns({ table, columns, wanted, hasTime }: Refused): RecordingError {
  const named = columns
    .map(({ text, index }) => (text === '' ? `column ${index + 1}` : `"${text}"`))
    .slice(0, 8);
  const place = table.headerLine > 0 ? { line: table.headerLine } : {};
  const found = `the columns are ${named.join(', ')}`;
  const has = (quantity: string): boolean => columns.some(({ header }) => header.quantity === quantity);
  if (has('frequency') && !hasTime) {
    return new RecordingError('readDelimited', {
      ...place,
      code: 'spectrum',
      found: `${found}: this looks like a spectrum, not like samples over time.`,
      remedy: 'Export the raw recording, with one row for each sample.',
    });
  }
  if (has('position')) {
    return new RecordingError('readDelimited', {
      ...place,
      code: 'positions',
      found: `${found}: these are positions and speeds, and no acceleration is among them.`,
      remedy: 'Record the accelerometer; a position sensor is far too slow to show shaking.',
    });
  }
  return new RecordingError('readDelimited', {
    ...place,
    code: 'no-acceleration',
    found: `${found}: none of them is known as ${wanted === 'acceleration' ? 'an acceleration' : 'a turning rate'}.`,
    remedy: has('magnitude')
      ? 'A magnitude alone hides the directions and doubles frequencies: export the axes, or name it in options.columns.x.'
      : 'If one is, name it in options.columns, for example { x: "…", y: "…", z: "…" }.',
  });
}
