import { numberReader } from './read-number.js';
import { dateReader, readClock } from './read-stamp.js';
import { type Plan } from './choose-columns.js';
import { type Table } from './text-table.js';
import { type BadCells } from './types.js';

/** The chosen columns as figures, one place a row that could be used. */
export interface RawColumns {
  /** In the file's unit, or seconds where the stamps are clocks or dates; empty where there is no time column. */
  readonly stamps: Float64Array;
  /** In the file's unit; NaN where a cell holds no figure. */
  readonly axes: readonly Float64Array[];
  readonly badCells: BadCells;
  /** Rows of the wrong length. */
  readonly raggedRows: BadCells;
  readonly rows: number;
}

const LINES_NAMED = 5;
const SKIPPED = /^\s*(#|\/\/|%)/;

/**
 * Reads the chosen columns of a whole table, column by column and without an object for each row.
 *
 * @param table - the table
 * @param plan - the columns to read
 */
export function readColumns(table: Table, plan: Plan): RawColumns {
  const read = numberReader(table.style);
  const stampReader =
    plan.time?.column.form === 'clock' ? readClock : plan.time?.column.form === 'date' ? dateReader() : read;
  const timeIndex = plan.time?.column.index;
  const { sensor } = plan;
  const indexes = plan.axes.map(({ column }) => column.index);
  const needed = Math.max(...indexes, timeIndex ?? 0);
  const stamps = timeIndex === undefined ? undefined : new Growing(table.expectedRows);
  const axes = indexes.map(() => new Growing(table.expectedRows));
  const bad = new Faults();
  const ragged = new Faults();
  table.forEachBlock((rows, firstLine) => {
    for (let i = 0; i < rows.length; i++) {
      const row = rows[i] ?? [];
      if (row.length <= needed || row.length !== table.width) {
        if (isBlank(row)) continue;
        if (row.length <= needed || hasMore(row, table.width)) {
          ragged.add(firstLine + i);
          continue;
        }
      }
      if (sensor && (row[sensor.index] ?? '').trim() !== sensor.name) continue;
      if (stamps && timeIndex !== undefined) {
        const stamp = stampReader(row[timeIndex] ?? '');
        if (stamp !== stamp) {
          if (!SKIPPED.test(row[0] ?? '')) bad.add(firstLine + i);
          continue;
        }
        stamps.push(stamp);
      }
      for (let k = 0; k < axes.length; k++) {
        const value = read(row[indexes[k] ?? 0] ?? '');
        if (value !== value) bad.add(firstLine + i);
        axes[k]?.push(value);
      }
    }
  });
  const columns = axes.map((axis) => axis.values());
  return {
    stamps: stamps?.values() ?? new Float64Array(0),
    axes: columns,
    badCells: bad.summary(),
    raggedRows: ragged.summary(),
    rows: columns[0]?.length ?? 0,
  };
}

function isBlank(row: readonly string[]): boolean {
  return row.every((cell) => cell.trim() === '') || SKIPPED.test(row[0] ?? '');
}

function hasMore(row: readonly string[], width: number): boolean {
  return row.slice(width).some((cell) => cell.trim() !== '');
}

class Growing {
  #values: Float64Array;
  #length = 0;

  constructor(expected: number) {
    this.#values = new Float64Array(Math.max(expected, 64));
  }

  push(value: number): void {
    if (this.#length === this.#values.length) {
      const larger = new Float64Array(Math.ceil(1.6 * this.#length));
      larger.set(this.#values);
      this.#values = larger;
    }
    this.#values[this.#length++] = value;
  }

  values(): Float64Array {
    return this.#values.slice(0, this.#length);
  }
}

class Faults {
  #count = 0;
  readonly #lines: number[] = [];

  add(line: number): void {
    this.#count++;
    if (this.#lines.length < LINES_NAMED && this.#lines.at(-1) !== line) this.#lines.push(line);
  }

  summary(): BadCells {
    return { count: this.#count, lines: this.#lines };
  }
}
