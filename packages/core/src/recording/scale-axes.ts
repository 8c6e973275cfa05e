import { type Plan } from './choose-columns.js';
import { RecordingError } from './recording-error.js';
import { STANDARD_GRAVITY, type Unit } from './units.js';
import { type ChannelUnit, type Gravity } from './types.js';

/** How the file's figures become SI, and what was made of gravity. */
export interface Scale {
  readonly factor: number;
  readonly unit: ChannelUnit;
  /** Name of the file's unit. */
  readonly fileUnit: string;
  readonly gravity: Gravity;
  readonly notes: readonly string[];
}

/** Counts that sensors give for 1 g. */
const COUNTS = [256, 512, 1024, 2048, 4096, 8192, 16384];

/**
 * Settles the unit of the axes: as the file or the caller says, else by the size of the steady pull in them.
 *
 * @param axes - values in the file's unit, NaN where there are none
 * @param plan - the columns chosen
 * @param given - what the caller says about gravity
 */
export function scaleAxes(axes: readonly Float64Array[], plan: Plan, given: Gravity | undefined): Scale {
  if (plan.quantity === 'sound') return soundScale(axes);
  if (plan.quantity === 'rotation') return rotationScale(plan.unit);
  const steady = Math.hypot(...axes.map(mean));
  const { unit, note } = plan.unit ? { unit: plan.unit, note: undefined } : guessUnit(steady, axes);
  if (unit.quantity !== 'acceleration') throw wrongUnit(unit);
  const gravity = given ?? gravityIn(steady * unit.factor, plan, axes.length);
  return {
    factor: unit.factor,
    unit: 'm/s²',
    fileUnit: unit.name,
    gravity,
    notes: note === undefined ? [] : [note],
  };
}

function mean(values: Float64Array): number {
  let sum = 0;
  let count = 0;
  for (const value of values) {
    if (Number.isNaN(value)) continue;
    sum += value;
    count++;
  }
  return count === 0 ? 0 : sum / count;
}

interface Guess {
  readonly unit: Unit;
  readonly note: string;
}

function guessUnit(steady: number, axes: readonly Float64Array[]): Guess {
  const size = `No unit is given. The steady pull in the axes is ${Number(steady.toPrecision(3))}`;
  const acceleration = (name: string, factor: number): Unit => ({ name, quantity: 'acceleration', factor });
  if (near(steady, STANDARD_GRAVITY, 0.12)) {
    return { unit: acceleration('m/s²', 1), note: `${size}, which is gravity in m/s²: read as m/s².` };
  }
  if (near(steady, 1, 0.12))
    return { unit: acceleration('g', STANDARD_GRAVITY), note: `${size}, which is gravity in g: read as g.` };
  const counts = COUNTS.find((count) => near(steady, count, 0.04));
  if (counts !== undefined && wholeNumbers(axes)) {
    return {
      unit: acceleration(`1/${counts} g`, STANDARD_GRAVITY / counts),
      note: `${size} and all figures are whole: read as sensor counts, ${counts} to 1 g.`,
    };
  }
  if (near(steady, 1000, 0.12))
    return {
      unit: acceleration('mg', STANDARD_GRAVITY / 1000),
      note: `${size}, which is gravity in mg: read as mg.`,
    };
  return {
    unit: acceleration('m/s²', 1),
    note: `${size}, which is gravity in no usual unit: read as m/s² without certainty. Give options.columns.unit if it is another.`,
  };
}

function near(value: number, target: number, share: number): boolean {
  return Math.abs(value - target) <= share * target;
}

function wholeNumbers(axes: readonly Float64Array[]): boolean {
  return axes.every((axis) =>
    axis.subarray(0, 500).every((value) => Number.isNaN(value) || Number.isInteger(value)),
  );
}

function gravityIn(steady: number, plan: Plan, axes: number): Gravity {
  if (plan.gravityRemoved) return 'removed';
  if (near(steady, STANDARD_GRAVITY, 0.2)) return 'present';
  return axes === 3 && steady < 0.15 * STANDARD_GRAVITY ? 'removed' : 'unknown';
}

function rotationScale(unit: Unit | undefined): Scale {
  if (unit && unit.quantity !== 'rotation') throw wrongUnit(unit);
  const notes = unit ? [] : ['No unit is given for the turning rate: read as rad/s.'];
  return {
    factor: unit?.factor ?? 1,
    unit: 'rad/s',
    fileUnit: unit?.name ?? 'rad/s',
    gravity: 'unknown',
    notes,
  };
}

function soundScale(axes: readonly Float64Array[]): Scale {
  let peak = 0;
  for (const axis of axes) for (const value of axis) if (Math.abs(value) > peak) peak = Math.abs(value);
  const whole = peak > 1 && peak <= 32768 && wholeNumbers(axes);
  const notes = whole ? ['Sound is in whole numbers: read as 16-bit samples.'] : [];
  return {
    factor: whole ? 1 / 32768 : 1,
    unit: 'full scale',
    fileUnit: whole ? '16 bit' : 'full scale',
    gravity: 'unknown',
    notes,
  };
}

function wrongUnit(unit: Unit): RecordingError {
  return new RecordingError('readDelimited', {
    code: 'unknown-unit',
    found: `the unit ${unit.name} does not belong to what is to be read.`,
    remedy: 'Give options.columns.unit, or choose other columns.',
  });
}
