import { type Plan } from './choose-columns.js';
import { fillStraight, joinRuns, LONGEST_PATCH, spreadRows } from './fill-missing.js';
import { findClipping } from './find-clipping.js';
import { findLevelPumping } from './find-level-pumping.js';
import { countHeldRows, findStuck } from './find-stuck.js';
import { type LaidRows } from './lay-in-time.js';
import { motionNotes } from './motion-notes.js';
import { ontoEvenBase, type EvenRows } from './onto-even-base.js';
import { type RawColumns } from './read-columns.js';
import { RecordingError } from './recording-error.js';
import { evenLength } from './resample-evenly.js';
import { roundingStep } from './rounding-step.js';
import { scanSamples } from './scan-samples.js';
import { type Scale } from './scale-axes.js';
import { type Table } from './text-table.js';
import { STANDARD_GRAVITY } from './units.js';
import { type Channel, type Recording, type Sampling, type StampedSamples } from './types.js';

interface Parts {
  readonly table: Table;
  readonly plan: Plan;
  readonly raw: RawColumns;
  readonly scale: Scale;
  readonly laid: LaidRows;
  readonly name: string;
}

/** m/s²; no sensor that this is for shows more, so a larger figure is a damaged cell. */
const BEYOND_ALL = 1e6;
/** Sensor ranges in common use, g. */
const RANGES = [2, 4, 8, 16];

/** Makes the recording out of ordered rows: gaps filled, SI, quality looked at as recorded, uniform base. */
export function finishMotion({ table, plan, raw, scale, laid, name }: Parts): Recording {
  refuseVast(laid);
  const steps = laid.axes.map(stepOf);
  const filled = laid.axes.map((axis) => toUnits(spreadRows(axis, laid.fitted.missing), scale.factor));
  const runs = filled.flatMap(fillStraight).filter(({ count }) => count > LONGEST_PATCH);
  const recorded = filled.map((samples, i) => ({ name: channelName(plan, i), unit: scale.unit, samples }));
  if (recorded.every(({ samples }) => samples.length < 3)) throw nothingLeft();
  const missing = missingRuns(laid);
  const even = ontoEvenBase(recorded, { fitted: laid.fitted, gaps: joinRuns([...runs, ...missing]) });
  const sampling = describe({ plan, raw, scale, laid, steps, recorded, even });
  return {
    name,
    sampleRate: 1 / laid.fitted.period,
    channels: even.channels,
    sampling: { ...sampling, notes: motionNotes({ table, plan, raw, scale, laid, sampling }) },
  };
}

function channelName(plan: Plan, i: number): string {
  const axis = plan.axes[i];
  if (plan.quantity !== 'sound') return axis?.role ?? 'x';
  return plan.axes.length === 1 ? 'sound' : (axis?.column.text.trim() ?? `sound ${i + 1}`);
}

/** In place, on samples that this room owns: a copy of all axes would be held beside them else. */
function toUnits(values: Float64Array, factor: number): Float64Array {
  for (let i = 0; i < values.length; i++) {
    const value = (values[i] ?? NaN) * factor;
    values[i] = Math.abs(value) < BEYOND_ALL ? value : NaN;
  }
  return values;
}

function missingRuns({ fitted }: LaidRows): { start: number; count: number }[] {
  let shift = 0;
  return fitted.missing.map(({ before, count }) => {
    const start = before + shift;
    shift += count;
    return { start, count };
  });
}

interface Described extends Omit<Parts, 'table' | 'name'> {
  /** Rounding of each axis in the file's unit. */
  readonly steps: readonly number[];
  readonly recorded: readonly Channel[];
  readonly even: EvenRows;
}

function describe({ plan, raw, scale, laid, steps, recorded, even }: Described): Omit<Sampling, 'notes'> {
  const { fitted } = laid;
  const sound = plan.quantity === 'sound';
  const limits = scale.unit === 'm/s²' ? RANGES.flatMap((range) => [range * STANDARD_GRAVITY]) : [1];
  const length = even.channels[0]?.samples.length ?? 0;
  const levelPumping = sound ? findLevelPumping(recorded, 1 / fitted.period) : undefined;
  const scans = recorded.map(({ samples }) => scanSamples(samples));
  return {
    kind: sound ? 'sound' : 'motion',
    duration: length * fitted.period,
    rateFrom: laid.rateFrom,
    jitter: fitted.jitter,
    stampStep: fitted.step,
    gaps: even.gaps,
    equalStamps: laid.equalStamps,
    unsortedRows: laid.unsortedRows,
    badCells: raw.badCells,
    clipping: findClipping(recorded, { scans, limits }),
    columns: plan.readings.map((reading) => withUnit(reading, { scale, laid })),
    timeBase: fitted.kind,
    passband: even.passband,
    ...(sound ? {} : { gravity: scale.gravity }),
    stuck: findStuck(recorded, { scans, shortest: Math.max(20, Math.round(0.1 / fitted.period)) }),
    heldRows: countHeldRows(recorded),
    resolution: recorded.map(({ name }, i) => ({ channel: name, step: (steps[i] ?? 0) * scale.factor })),
    sensors: plan.sensors,
    doubledRows: laid.doubledRows,
    ...(levelPumping ? { levelPumping } : {}),
    ...(fitted.kind === 'stamps' && fitted.times ? { asStamped: asStamped(fitted.times, recorded) } : {}),
  };
}

function asStamped(times: Float64Array, channels: readonly Channel[]): StampedSamples {
  const first = times[0] ?? 0;
  return { times: times.map((time) => time - first), channels };
}

/** By the figures as the file writes them, a stretch of them: filled ones would hide the step. */
function stepOf(axis: Float64Array): number {
  return roundingStep(axis.subarray(0, 4000).filter(Number.isFinite));
}

function withUnit(
  reading: Sampling['columns'][number],
  { scale, laid }: { scale: Scale; laid: LaidRows },
): Sampling['columns'][number] {
  if (reading.role === 'time') return { ...reading, unit: laid.timeUnit };
  const axis =
    reading.role === 'x' || reading.role === 'y' || reading.role === 'z' || reading.role === 'sound';
  return axis ? { ...reading, unit: scale.fileUnit } : reading;
}

/** Samples for each row beyond which the stamps cannot be those of the rows. */
const MOST_FOR_ROW = 12;

function refuseVast({ axes, fitted }: LaidRows): void {
  const rows = axes[0]?.length ?? 0;
  const counted = fitted.missing.reduce((sum, { count }) => sum + count, rows);
  const laid = fitted.times ? evenLength({ times: fitted.times, period: fitted.period }) : 0;
  if (Math.max(counted, laid) <= MOST_FOR_ROW * rows + 100_000) return;
  throw new RecordingError('readDelimited', {
    code: 'bad-time',
    found: `the stamps of ${rows} rows span ${Math.max(counted, laid)} samples.`,
    remedy: 'Give options.sampleRate in Hz, or name another time column in options.columns.time.',
  });
}

function nothingLeft(): RecordingError {
  return new RecordingError('readDelimited', {
    code: 'bad-values',
    found: 'no figures are left once damaged cells are taken out.',
    remedy: 'Export the recording again, or choose other columns in options.columns.',
  });
}
