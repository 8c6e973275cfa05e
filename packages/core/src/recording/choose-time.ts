import { type ColumnFacts } from './column-facts.js';

/** The time column, why it was taken, and how sure that is. */
export interface TimeChoice {
  readonly column: ColumnFacts;
  readonly reason: string;
  readonly confidence: number;
}

/**
 * Picks the time column: by name, of several the one with the finest stamps; else the one column that only rises.
 *
 * @param columns - all columns
 * @returns undefined where none is a time
 */
export function chooseTime(columns: readonly ColumnFacts[]): TimeChoice | undefined {
  const named = columns.filter(({ header, filled }) => header.quantity === 'time' && filled > 0.3);
  const best = named.toSorted((a, b) => merit(b) - merit(a))[0];
  if (best) {
    const several = named.length > 1 ? ', the finest of the time columns' : '';
    return { column: best, reason: `named as time${several}`, confidence: 0.95 };
  }
  const stamped = columns.find(({ form, filled }) => form !== 'number' && filled > 0.3);
  if (stamped) return { column: stamped, reason: `holds ${stamped.form} stamps`, confidence: 0.9 };
  const rising = columns.find((column) => isUnnamed(column) && onlyRises(column));
  return rising && columns.length > 1
    ? { column: rising, reason: 'the values only rise, by even steps', confidence: 0.7 }
    : undefined;
}

/** Distinct stamps first; then a count from the start over an epoch, whose digits may not fit a double. */
function merit({ distinct, form, header, values, filled }: ColumnFacts): number {
  const near = Math.abs(values[0] ?? 0) < 1e9 ? 0.4 : 0;
  return (
    distinct * filled + (form === 'number' ? 0.2 : 0) + near + (header.unit?.quantity === 'time' ? 0.1 : 0)
  );
}

function isUnnamed({ header, text }: ColumnFacts): boolean {
  return text === '' || (header.quantity === 'unsaid' && header.axis === undefined);
}

function onlyRises({ values, rising, filled, distinct }: ColumnFacts): boolean {
  if (values.length < 4 || rising < 1 || filled < 0.9 || distinct < values.length / 4) return false;
  const steps = values
    .subarray(1)
    .map((value, i) => value - (values[i] ?? 0))
    .filter(Number.isFinite);
  const sorted = steps.filter((step) => step > 0).sort();
  const middle = sorted[sorted.length >> 1] ?? 0;
  return middle > 0 && steps.filter((step) => step < 3 * middle).length > 0.9 * steps.length;
}
