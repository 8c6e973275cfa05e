import { type ColumnFacts } from './column-facts.js';

/** One column that becomes a channel. */
export interface AxisChoice {
  readonly column: ColumnFacts;
  readonly role: 'x' | 'y' | 'z' | 'sound';
  readonly reason: string;
  readonly confidence: number;
}

/** The columns of one sensor that were chosen. */
export interface AxesChoice {
  readonly axes: readonly AxisChoice[];
  readonly quantity: 'acceleration' | 'rotation' | 'sound';
  readonly gravityRemoved: boolean;
}

/** What to look for. */
export interface Wanted {
  readonly quantity: 'acceleration' | 'rotation';
  /** The rows are those of one sensor of that quantity, so axes need not say what they are. */
  readonly oneSensor: boolean;
}

const AXES = ['x', 'y', 'z'] as const;

/**
 * Picks the columns to read as channels: by name, never by place where there are names.
 *
 * @param columns - all columns but the time
 * @param wanted - the quantity that is asked for
 * @returns undefined where no column holds it
 */
export function chooseAxes(
  columns: readonly ColumnFacts[],
  { quantity: wanted, oneSensor }: Wanted,
): AxesChoice | undefined {
  const usable = columns.filter(({ filled, form }) => filled > 0.3 && form === 'number');
  if (columns.every(({ text }) => text === ''))
    return wanted === 'acceleration' ? byPlace(usable) : undefined;
  const groups = wanted === 'rotation' ? rotationGroups(usable, oneSensor) : accelerationGroups(usable);
  const best = groups.toSorted((a, b) => b.axes.length - a.axes.length)[0];
  if (best && best.axes.length > 0) return best;
  return wanted === 'acceleration' ? soundIn(usable) : undefined;
}

function accelerationGroups(columns: readonly ColumnFacts[]): AxesChoice[] {
  const stated = columns.filter(({ header }) => header.quantity === 'acceleration');
  const unsaid = columns.filter(({ header }) => header.quantity === 'unsaid' && header.axis !== undefined);
  return [
    group(
      stated.filter(({ header }) => !header.gravityRemoved),
      { quantity: 'acceleration', confidence: 0.95 },
    ),
    group(
      stated.filter(({ header }) => header.gravityRemoved),
      { quantity: 'acceleration', confidence: 0.95 },
    ),
    group(unsaid, { quantity: 'acceleration', confidence: 0.85 }),
  ];
}

function rotationGroups(columns: readonly ColumnFacts[], oneSensor: boolean): AxesChoice[] {
  const turning = columns.filter(
    ({ header }) =>
      header.quantity === 'rotation' ||
      (oneSensor && header.quantity === 'unsaid' && header.axis !== undefined),
  );
  return [group(turning, { quantity: 'rotation', confidence: 0.9 })];
}

interface Grouping {
  readonly quantity: 'acceleration' | 'rotation';
  readonly confidence: number;
}

function group(columns: readonly ColumnFacts[], { quantity, confidence }: Grouping): AxesChoice {
  const named = AXES.flatMap((role) => {
    const column = columns.find(({ header }) => header.axis === role);
    return column ? [{ column, role, reason: `named as the ${role} axis`, confidence }] : [];
  });
  const nameless = columns.filter(({ header }) => header.axis === undefined).slice(0, 3);
  const axes =
    named.length > 0
      ? named
      : nameless.map((column, i) => ({
          column,
          role: AXES[i] ?? 'x',
          reason: `named as ${quantity}, the axis by its place`,
          confidence: nameless.length === 1 ? 0.8 : 0.6,
        }));
  return { axes, quantity, gravityRemoved: axes.some(({ column }) => column.header.gravityRemoved) };
}

function byPlace(columns: readonly ColumnFacts[]): AxesChoice | undefined {
  const moving = columns.filter(({ distinct }) => distinct > 1);
  const taken = (moving.length > 0 ? moving : columns).slice(0, 3);
  if (taken.length === 0) return undefined;
  const axes = taken.map((column, i) => ({
    column,
    role: AXES[i] ?? 'x',
    reason: 'no header: taken by its place',
    confidence: 0.5,
  }));
  return { axes, quantity: 'acceleration', gravityRemoved: false };
}

function soundIn(columns: readonly ColumnFacts[]): AxesChoice | undefined {
  const sounds = columns.filter(({ header }) => header.quantity === 'sound').slice(0, 2);
  const axes = sounds.map((column) => ({
    column,
    role: 'sound' as const,
    reason: 'named as sound',
    confidence: 0.9,
  }));
  return axes.length === 0 ? undefined : { axes, quantity: 'sound', gravityRemoved: false };
}
