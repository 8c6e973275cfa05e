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
  const target = new Target(table, plan);
  const needed = Math.max(...plan.axes.map(({ column }) => column.index), plan.time?.column.index ?? 0);
  const ragged = new Faults();
  table.forEachBlock((rows, firstLine) => {
    for (let i = 0; i < rows.length; i++) {
      const row = rows[i] ?? [];
      if (row.length === table.width) target.take(row, firstLine + i);
      else if (isBlank(row)) continue;
      else if (row.length <= needed || hasMore(row, table.width)) ragged.add(firstLine + i);
      else target.take(row, firstLine + i);
    }
  });
  return { ...target.columns(), raggedRows: ragged.summary() };
}

/** Takes rows in and gives columns out. */
class Target {
  readonly #read: (cell: string) => number;
  readonly #readStamp: (cell: string) => number;
  readonly #timeIndex: number;
  readonly #indexes: readonly number[];
  readonly #sensor: Plan['sensor'];
  readonly #stamps: Growing;
  readonly #axes: readonly Growing[];
  readonly #bad = new Faults();

  constructor(table: Table, { time, axes, sensor }: Plan) {
    this.#read = numberReader(table.style);
    const form = time?.column.form ?? 'number';
    this.#readStamp = form === 'number' ? this.#read : form === 'clock' ? readClock : dateReader();
    this.#timeIndex = time?.column.index ?? -1;
    this.#indexes = axes.map(({ column }) => column.index);
    this.#sensor = sensor;
    this.#stamps = new Growing(time ? table.expectedRows : 0);
    this.#axes = axes.map(() => new Growing(table.expectedRows));
  }

  take(row: readonly string[], line: number): void {
    if (this.#sensor && (row[this.#sensor.index] ?? '').trim() !== this.#sensor.name) return;
    if (this.#timeIndex >= 0) {
      const stamp = this.#readStamp(row[this.#timeIndex] ?? '');
      if (Number.isNaN(stamp)) {
        if (!isBlank(row)) this.#bad.add(line);
        return;
      }
      this.#stamps.push(stamp);
    }
    for (let k = 0; k < this.#axes.length; k++) {
      const value = this.#read(row[this.#indexes[k] ?? 0] ?? '');
      if (Number.isNaN(value)) this.#bad.add(line);
      this.#axes[k]?.push(value);
    }
  }

  columns(): Omit<RawColumns, 'raggedRows'> {
    const axes = this.#axes.map((axis) => axis.values());
    return { stamps: this.#stamps.values(), axes, badCells: this.#bad.summary(), rows: axes[0]?.length ?? 0 };
  }
}

function isBlank(row: readonly string[]): boolean {
  return row.every((cell) => cell.trim() === '') || SKIPPED.test(row[0] ?? '');
}

function hasMore(row: readonly string[], width: number): boolean {
  return row.slice(width).some((cell) => cell.trim() !== '');
}

/** A column of unknown length. What the first piece cannot hold goes into further ones, joined once at the end. */
class Growing {
  readonly #full: Float64Array[] = [];
  #values: Float64Array;
  #length = 0;

  constructor(expected: number) {
    this.#values = new Float64Array(Math.max(expected, 64));
  }

  push(value: number): void {
    if (this.#length === this.#values.length) {
      this.#full.push(this.#values);
      this.#values = new Float64Array(Math.max(64, this.#values.length >> 2));
      this.#length = 0;
    }
    this.#values[this.#length++] = value;
  }

  /** All values; the column is at an end then. */
  values(): Float64Array {
    const last = this.#values.subarray(0, this.#length);
    if (this.#full.length > 0) return joined([...this.#full.splice(0), last]);
    // A copy would need the memory twice; a little room at the end costs less.
    return this.#length > 0.8 * this.#values.length ? last : last.slice();
  }
}

function joined(pieces: readonly Float64Array[]): Float64Array {
  const whole = new Float64Array(pieces.reduce((sum, { length }) => sum + length, 0));
  let place = 0;
  for (const piece of pieces) {
    whole.set(piece, place);
    place += piece.length;
  }
  return whole;
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
