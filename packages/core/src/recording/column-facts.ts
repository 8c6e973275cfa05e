import { numberReader } from './read-number.js';
import { readHeader, type Header } from './read-header.js';
import { dateReader, readClock, stampForm, type StampForm } from './read-stamp.js';
import { type Table } from './text-table.js';

/** What header and first rows say about one column. */
export interface ColumnFacts {
  readonly index: number;
  readonly text: string;
  readonly header: Header;
  /** Numbers, or seconds where the cells are stamps; NaN where there is none. */
  readonly values: Float64Array;
  readonly form: StampForm;
  /** Share of the cells that hold a value. */
  readonly filled: number;
  readonly distinct: number;
  /** Share of steps that do not go back. */
  readonly rising: number;
}

/**
 * Looks at each column of a table's first rows.
 *
 * @param table - the table
 * @param rows - the rows to look at: all of the preview, or one sensor's
 */
export function columnFacts(table: Table, rows: Table['preview']): ColumnFacts[] {
  const read = numberReader(table.style);
  return Array.from({ length: table.width }, (_, index) => {
    const text = table.headers[index] ?? '';
    const unit = table.units[index] ?? '';
    const form = formOf(rows, index);
    const reader = form === 'number' ? read : form === 'clock' ? readClock : dateReader();
    const values = Float64Array.from(rows, (row) => reader(row[index] ?? ''));
    const good = values.filter((value) => !Number.isNaN(value));
    const steps = good.subarray(1).map((value, i) => value - (good[i] ?? 0));
    return {
      index,
      text,
      header: readHeader(unit === '' ? text : `${text} (${unit})`),
      values,
      form,
      filled: good.length / Math.max(values.length, 1),
      distinct: new Set(good).size,
      rising: steps.length === 0 ? 0 : steps.filter((step) => step >= 0).length / steps.length,
    };
  });
}

function formOf(rows: Table['preview'], index: number): StampForm {
  const forms = rows.slice(0, 50).map((row) => stampForm(row[index] ?? ''));
  const dates = forms.filter((form) => form === 'date').length;
  const clocks = forms.filter((form) => form === 'clock').length;
  if (dates + clocks < forms.length / 2) return 'number';
  return dates >= clocks ? 'date' : 'clock';
}
